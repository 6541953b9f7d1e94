package org.ebbwatch.judge.estimate;

import java.util.Arrays;

/**
 * The recent past of one quantity: a ring of readings at least {@code spacingMillis} apart, for slopes and drops. Memory
 * 8 bytes a place: readings are kept to seven digits, times against the latest (up to 24 days back).
 */
public final class Trail {
    private final int[] stamps;
    private final float[] readings;
    private final long spacingMillis;
    private long latestMillis;
    private int next;
    private int size;

    public Trail(int places, long spacingMillis) {
        this.stamps = new int[places];
        this.readings = new float[places];
        this.spacingMillis = spacingMillis;
    }

    /** Keeps a reading unless the one before is too near; a NaN is never kept. Says whether it was kept. */
    public boolean add(long atMillis, double reading) {
        if (Double.isNaN(reading) || (size > 0 && atMillis - latestMillis < spacingMillis)) {
            return false;
        }
        stamps[next] = (int) atMillis;
        readings[next] = (float) reading;
        latestMillis = atMillis;
        next = (next + 1) % stamps.length;
        size = Math.min(size + 1, stamps.length);
        return true;
    }

    public void clear() {
        size = 0;
        next = 0;
        Arrays.fill(readings, 0);
    }

    public int size() {
        return size;
    }

    /** The reading {@code steps} places back; 1 is the latest. */
    public double reading(int steps) {
        return readings[back(steps)];
    }

    /** When the reading {@code steps} places back was taken. */
    public long millis(int steps) {
        return latestMillis - age(steps);
    }

    /** How many readings are no older than this against the latest. */
    public int sizeWithin(long spanMillis) {
        int count = 0;
        while (count < size && age(count + 1) <= spanMillis) {
            count++;
        }
        return count;
    }

    /** Least-squares slope per second over the last {@code spanMillis}; NaN with fewer than {@code least} readings. */
    public double slopePerSecond(long spanMillis, int least) {
        if (size < least) {
            return Double.NaN;
        }
        double sumT = 0;
        double sumY = 0;
        double sumTt = 0;
        double sumTy = 0;
        int count = 0;
        for (int step = 1; step <= size; step++) {
            double seconds = -age(step) / 1000.0;
            if (age(step) > spanMillis) {
                break;
            }
            double reading = readings[back(step)];
            sumT += seconds;
            sumY += reading;
            sumTt += seconds * seconds;
            sumTy += seconds * reading;
            count++;
        }
        double spread = count * sumTt - sumT * sumT;
        return count < least || spread <= 0 ? Double.NaN : (count * sumTy - sumT * sumY) / spread;
    }

    /** Against the latest; the difference of truncated times is right whatever was truncated. */
    private int age(int steps) {
        return stamps[back(1)] - stamps[back(steps)];
    }

    private int back(int steps) {
        int place = next - steps;
        return place < 0 ? place + stamps.length : place;
    }
}
