package org.ebbwatch.judge.estimate;

import java.util.Arrays;

/**
 * The recovery of a cell off its load, kept as means over stretches that grow with time, three to each doubling from 4 s to
 * 72 h: fine where it is quick, and all the quieter where it is slow.
 *
 * <p>Constant memory: 48 stretches, 10 bytes each.
 */
public final class RestCurve {
    private static final int STRETCHES = 48;
    private static final double FIRST_MILLIS = 4_000;
    private static final double GROWTH = StrictMath.cbrt(2);
    private static final long FIRST_FORECAST_MILLIS = 600_000;

    private final float[] volts = new float[STRETCHES];
    private final float[] seconds = new float[STRETCHES];
    private final short[] counts = new short[STRETCHES];
    private long beganMillis;
    private int stretch;
    private double endMillis;
    private double sumVolts;
    private double sumSeconds;
    private int count;
    private long forecastMillis;

    public RestCurve() {
        begin(0);
    }

    /** The load has just come off. */
    public void begin(long millis) {
        beganMillis = millis;
        stretch = 0;
        endMillis = FIRST_MILLIS * GROWTH;
        forecastMillis = FIRST_FORECAST_MILLIS;
        forget();
    }

    /** Voltages before and after cannot be compared. */
    public void forget() {
        Arrays.fill(counts, (short) 0);
        sumVolts = 0;
        sumSeconds = 0;
        count = 0;
    }

    /** Takes one reading, NaN if not known; says whether a forecast is due: after 10, 20, 40 minutes and so on. */
    public boolean add(long millis, double reading) {
        long since = millis - beganMillis;
        while (since >= endMillis && stretch < STRETCHES - 1) {
            close();
            stretch++;
            endMillis *= GROWTH;
        }
        if (since >= FIRST_MILLIS && !Double.isNaN(reading)) {
            count++;
            sumVolts += reading;
            sumSeconds += since / 1000.0;
        }
        if (since < forecastMillis) {
            return false;
        }
        while (forecastMillis <= since) {
            forecastMillis *= 2;
        }
        return true;
    }

    private void close() {
        store();
        sumVolts = 0;
        sumSeconds = 0;
        count = 0;
    }

    private void store() {
        counts[stretch] = (short) Math.min(count, Short.MAX_VALUE);
        if (count > 0) {
            volts[stretch] = (float) (sumVolts / count);
            seconds[stretch] = (float) (sumSeconds / count);
        }
    }

    /** The stretches seen since a share of the time so far, oldest first; the running one is the last. */
    Points since(double share) {
        store();
        double first = (endMillis / GROWTH) / 1000 * share;
        int filled = 0;
        var points = new Points(new double[STRETCHES], new double[STRETCHES], new double[STRETCHES], 0);
        for (int place = 0; place <= stretch; place++) {
            if (counts[place] > 0 && seconds[place] >= first) {
                points.seconds[filled] = seconds[place];
                points.volts[filled] = volts[place];
                points.counts[filled] = counts[place];
                filled++;
            }
        }
        return new Points(points.seconds, points.volts, points.counts, filled);
    }

    /** Means over stretches: when, how high, of how many readings. */
    record Points(double[] seconds, double[] volts, double[] counts, int size) {
        double lastSeconds() {
            return seconds[size - 1];
        }

        double lastVolts() {
            return volts[size - 1];
        }
    }
}
