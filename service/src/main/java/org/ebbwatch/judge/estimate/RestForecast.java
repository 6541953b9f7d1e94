package org.ebbwatch.judge.estimate;

import java.util.Arrays;
import java.util.Optional;

/**
 * A lower bound of the voltage a resting cell comes back to.
 *
 * <p>The recovery of a cell off its load is a sum of decaying exponentials, so the ratio of neighbouring rises never falls
 * with time. Carrying the present ratio on as a geometric series therefore never promises more than comes (Aitken's
 * delta-squared process, from memory). Three readings a third of the time so far apart are enough; the forecast is made
 * after 1, 2, 4, 8 and 16 hours. It may say that a cell will be over its limit; that a cell will stay below, it cannot say.
 *
 * <p>Constant memory: 48 readings.
 */
public final class RestForecast {
    private static final long SLOT_MILLIS = 1_200_000;
    private static final int SLOTS = 48;
    private static final int FIRST_SLOTS = 3;
    private static final long LATE_MILLIS = 60_000;

    private final double[] readings = new double[SLOTS];
    private long beganMillis;
    private int filled;

    /**
     * What will come at least.
     *
     * @param volts at the end of the time asked for, at least
     * @param limitAfterMillis the limit is reached so long after the beginning, at the latest
     */
    public record Forecast(double volts, long limitAfterMillis) {}

    /** The load has just come off. */
    public void begin(long millis) {
        beganMillis = millis;
        filled = 0;
        forget();
    }

    /** Readings before and after cannot be compared. */
    public void forget() {
        Arrays.fill(readings, Double.NaN);
    }

    /** Takes one smoothed voltage, NaN if not known; says whether a forecast can be made from here. */
    public boolean add(long millis, double volts) {
        long since = millis - beganMillis;
        int slot = (int) Math.min(since / SLOT_MILLIS, SLOTS);
        if (slot <= filled) {
            return false;
        }
        filled = slot;
        readings[slot - 1] = since - slot * SLOT_MILLIS <= LATE_MILLIS ? volts : Double.NaN;
        return slot % FIRST_SLOTS == 0 && Integer.bitCount(slot / FIRST_SLOTS) == 1;
    }

    /**
     * The forecast as of the last reading; empty where the readings do not show a recovery that slows down.
     *
     * @param limitVolts the limit in question
     * @param untilMillis the end of the time asked for, since the beginning
     * @param leastRiseVolts a rise below this is noise
     */
    public Optional<Forecast> forecast(double limitVolts, long untilMillis, double leastRiseVolts) {
        double last = readings[filled - 1];
        double rise = last - readings[filled * 2 / 3 - 1];
        double riseBefore = readings[filled * 2 / 3 - 1] - readings[filled / 3 - 1];
        if (!(rise > leastRiseVolts && rise < riseBefore)) {
            return Optional.empty();
        }
        double ratio = rise / riseBefore;
        double pace = filled / 3.0 * SLOT_MILLIS;
        double steps = (untilMillis - filled * SLOT_MILLIS) / pace;
        double toCome = rise * ratio / (1 - ratio);
        double volts = last + toCome * (1 - StrictMath.pow(ratio, steps));
        double left = 1 - (limitVolts - last) / toCome;
        if (steps <= 0 || left <= 0) {
            return Optional.empty();
        }
        double reached = Math.max(0, StrictMath.log(left) / StrictMath.log(ratio));
        return Optional.of(new Forecast(volts, Math.round(filled * SLOT_MILLIS + reached * pace)));
    }
}
