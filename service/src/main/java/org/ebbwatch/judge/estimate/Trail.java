package org.ebbwatch.judge.estimate;

import java.util.Arrays;

/**
 * The recent past of one quantity: a ring of readings at least {@code spacingMillis} apart, for slopes and drops. Memory
 * 16 bytes a place.
 */
public final class Trail {
    private final long[] millis;
    private final double[] readings;
    private final long spacingMillis;
    private int next;
    private int size;

    public Trail(int places, long spacingMillis) {
        this.millis = new long[places];
        this.readings = new double[places];
        this.spacingMillis = spacingMillis;
    }

    /** Keeps a reading unless the one before is too near; a NaN is never kept. Says whether it was kept. */
    public boolean add(long atMillis, double reading) {
        if (Double.isNaN(reading) || (size > 0 && atMillis - millis[back(1)] < spacingMillis)) {
            return false;
        }
        millis[next] = atMillis;
        readings[next] = reading;
        next = (next + 1) % millis.length;
        size = Math.min(size + 1, millis.length);
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
        return millis[back(steps)];
    }

    /** How many readings are no older than this against the latest. */
    public int sizeWithin(long spanMillis) {
        int count = 0;
        while (count < size && millis[back(1)] - millis[back(count + 1)] <= spanMillis) {
            count++;
        }
        return count;
    }

    /** Least-squares slope per second over the last {@code spanMillis}; NaN with fewer than {@code least} readings. */
    public double slopePerSecond(long spanMillis, int least) {
        if (size < least) {
            return Double.NaN;
        }
        long newest = millis[back(1)];
        double sumT = 0;
        double sumY = 0;
        double sumTt = 0;
        double sumTy = 0;
        int count = 0;
        for (int step = 1; step <= size; step++) {
            double seconds = (millis[back(step)] - newest) / 1000.0;
            if (-seconds * 1000 > spanMillis) {
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

    private int back(int steps) {
        int place = next - steps;
        return place < 0 ? place + millis.length : place;
    }
}
