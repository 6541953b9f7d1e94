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
 * Noise makes the ratio uncertain; twice its deviation is taken off.
 *
 * <p>Constant memory: the eleven readings those forecasts need.
 */
public final class RestForecast {
    private static final long SLOT_MILLIS = 1_200_000;
    private static final int SLOTS = 48;
    /** 1, 2, 3, 4, 6, 8, 12 ... 48 slots: thirds of a forecast's time. */
    private static final int PLACES = 11;

    private static final int FIRST_SLOTS = 3;
    private static final long LATE_MILLIS = 60_000;

    private static final double LEAST_DEVIATIONS = 20;

    private final float[] readings = new float[PLACES];
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
        Arrays.fill(readings, Float.NaN);
    }

    /** Takes one smoothed voltage, NaN if not known; says whether a forecast can be made from here. */
    public boolean add(long millis, double volts) {
        long since = millis - beganMillis;
        int slot = (int) Math.min(since / SLOT_MILLIS, SLOTS);
        if (slot <= filled) {
            return false;
        }
        filled = slot;
        int place = place(slot);
        if (place >= 0) {
            readings[place] = since - slot * SLOT_MILLIS <= LATE_MILLIS ? (float) volts : Float.NaN;
        }
        return slot % FIRST_SLOTS == 0 && Integer.bitCount(slot / FIRST_SLOTS) == 1;
    }

    /** Where the reading at the end of a slot is kept; below 0 where no forecast needs it. */
    private static int place(int slot) {
        int doublings = Integer.numberOfTrailingZeros(slot);
        int rest = slot >> doublings;
        if (rest == 1) {
            return doublings == 0 ? 0 : 2 * doublings - 1;
        }
        return rest == FIRST_SLOTS ? 2 * doublings + 2 : -1;
    }

    private double reading(int slot) {
        return readings[place(slot)];
    }

    /**
     * The forecast as of the last reading; empty where the readings do not show a recovery that slows down.
     *
     * @param limitVolts the limit in question
     * @param untilMillis the end of the time asked for, since the beginning
     * @param deviationVolts standard deviation of the noise of one smoothed reading; a rise below twenty of it is noise
     */
    public Optional<Forecast> forecast(double limitVolts, long untilMillis, double deviationVolts) {
        double last = reading(filled);
        double rise = last - reading(filled / FIRST_SLOTS * 2);
        double riseBefore = reading(filled / FIRST_SLOTS * 2) - reading(filled / FIRST_SLOTS);
        if (!(rise > LEAST_DEVIATIONS * deviationVolts && rise > 0 && rise < riseBefore)) {
            return Optional.empty();
        }
        double seen = rise / riseBefore;
        double doubt = StrictMath.sqrt(2 * (1 + seen + seen * seen)) * deviationVolts / riseBefore;
        double ratio = seen - 2 * doubt;
        if (ratio <= 0) {
            return Optional.empty();
        }
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
