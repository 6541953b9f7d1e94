package org.ebbwatch.trace.plot;

import java.util.Arrays;

/**
 * Thins a series for a chart without losing a peak. The span of the chart is cut into equal buckets, about one for each
 * column of pixels; of each bucket the first, the least, the greatest and the last reading are kept, which draws the same
 * pixels as all of them would (Jugel et al., "M4", VLDB 2014; from memory). Where a bucket held an invalid reading, its first
 * one is kept too, as not-a-number, so that a gap stays a gap.
 *
 * <p>At most five points per bucket, in order of time; memory is fixed by the number of buckets. Every point given out was
 * put in as it is. Not thread-safe.
 */
public final class PlotThinning {

    private static final int SLOTS = 5;
    private static final int FIRST = 0;
    private static final int LEAST = 1;
    private static final int GREATEST = 2;
    private static final int LAST = 3;
    private static final int INVALID = 4;

    private final long fromMillis;
    private final long spanMillis;
    private final int buckets;
    private final boolean[] taken;
    private final long[] times;
    private final double[] readings;

    /**
     * A chart of [fromMillis, toMillis).
     *
     * @param fromMillis event time of its left edge
     * @param toMillis event time of its right edge, later than the left
     * @param buckets 1 to 100,000
     */
    public PlotThinning(long fromMillis, long toMillis, int buckets) {
        if (toMillis <= fromMillis || toMillis - fromMillis < 0 || buckets < 1 || buckets > 100_000) {
            throw new IllegalArgumentException(
                    "no chart: from " + fromMillis + " to " + toMillis + " in " + buckets + " buckets");
        }
        this.fromMillis = fromMillis;
        this.spanMillis = toMillis - fromMillis;
        this.buckets = buckets;
        taken = new boolean[buckets * SLOTS];
        times = new long[buckets * SLOTS];
        readings = new double[buckets * SLOTS];
    }

    /** Points of a chart, in order of time; not-a-number where readings are missing. */
    public record Points(long[] eventMillis, double[] readings) {}

    /**
     * Takes one reading, not-a-number for an invalid one; readings come in order of time, those outside the chart are left
     * out.
     */
    public void add(long eventMillis, double reading) {
        if (eventMillis < fromMillis || eventMillis - fromMillis >= spanMillis) {
            return;
        }
        int bucket = (int) ((double) (eventMillis - fromMillis) / spanMillis * buckets);
        int at = Math.min(bucket, buckets - 1) * SLOTS;
        if (Double.isNaN(reading)) {
            keepIf(!taken[at + INVALID], at + INVALID, eventMillis, reading);
            return;
        }
        keepIf(!taken[at + FIRST], at + FIRST, eventMillis, reading);
        keepIf(!taken[at + LEAST] || reading < readings[at + LEAST], at + LEAST, eventMillis, reading);
        keepIf(!taken[at + GREATEST] || reading > readings[at + GREATEST], at + GREATEST, eventMillis, reading);
        keepIf(true, at + LAST, eventMillis, reading);
    }

    /** What is to be drawn of all readings taken so far. */
    public Points points() {
        long[] outTimes = new long[buckets * SLOTS];
        double[] outReadings = new double[buckets * SLOTS];
        int count = 0;
        for (int at = 0; at < taken.length; at += SLOTS) {
            int before = count;
            for (int slot : inOrder(at)) {
                boolean again = count > before && outTimes[count - 1] == times[slot];
                if (taken[slot] && !again) {
                    outTimes[count] = times[slot];
                    outReadings[count] = readings[slot];
                    count++;
                }
            }
        }
        return new Points(Arrays.copyOf(outTimes, count), Arrays.copyOf(outReadings, count));
    }

    private void keepIf(boolean better, int slot, long eventMillis, double reading) {
        if (better) {
            taken[slot] = true;
            times[slot] = eventMillis;
            readings[slot] = reading;
        }
    }

    private int[] inOrder(int at) {
        int[] slots = {at + FIRST, at + LEAST, at + GREATEST, at + LAST, at + INVALID};
        for (int i = 1; i < SLOTS; i++) {
            for (int j = i; j > 0 && times[slots[j]] < times[slots[j - 1]]; j--) {
                int swapped = slots[j];
                slots[j] = slots[j - 1];
                slots[j - 1] = swapped;
            }
        }
        return slots;
    }
}
