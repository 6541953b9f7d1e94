package org.ebbwatch.passage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.ebbwatch.passage.RackSource.TracePoint;
import org.ebbwatch.trace.plot.PlotThinning;

/**
 * Thins readings of volts and degrees for one chart, in one walk: keeps each point that {@link PlotThinning} would keep of the volts or
 * of the degrees, whole. Memory is fixed by the number of buckets, at most ten points each. Not thread-safe.
 */
final class ChartPoints {
    private static final int SLOTS_A_QUANTITY = 5;
    private static final int SLOTS = 2 * SLOTS_A_QUANTITY;
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
    private final double[] volts;
    private final double[] celsius;
    private final boolean[] loads;

    /** A chart of [fromMillis, toMillis). */
    ChartPoints(long fromMillis, long toMillis, int buckets) {
        this.fromMillis = fromMillis;
        this.spanMillis = toMillis - fromMillis;
        this.buckets = buckets;
        taken = new boolean[buckets * SLOTS];
        times = new long[buckets * SLOTS];
        volts = new double[buckets * SLOTS];
        celsius = new double[buckets * SLOTS];
        loads = new boolean[buckets * SLOTS];
    }

    /** Takes one reading, not-a-number where invalid; in order of time. */
    void add(long eventMillis, double itsVolts, double itsCelsius, boolean loadApplied) {
        if (eventMillis < fromMillis || eventMillis - fromMillis >= spanMillis) {
            return;
        }
        int bucket = (int) ((double) (eventMillis - fromMillis) / spanMillis * buckets);
        int first = Math.min(bucket, buckets - 1) * SLOTS;
        for (int quantity = 0; quantity < 2; quantity++) {
            int at = first + quantity * SLOTS_A_QUANTITY;
            double[] kept = quantity == 0 ? volts : celsius;
            double now = quantity == 0 ? itsVolts : itsCelsius;
            if (Double.isNaN(now)) {
                keepIf(!taken[at + INVALID], at + INVALID, eventMillis, itsVolts, itsCelsius, loadApplied);
                continue;
            }
            boolean begins = !taken[at + FIRST];
            keepIf(begins, at + FIRST, eventMillis, itsVolts, itsCelsius, loadApplied);
            keepIf(begins || now < kept[at + LEAST], at + LEAST, eventMillis, itsVolts, itsCelsius, loadApplied);
            keepIf(begins || now > kept[at + GREATEST], at + GREATEST, eventMillis, itsVolts, itsCelsius, loadApplied);
            keepIf(true, at + LAST, eventMillis, itsVolts, itsCelsius, loadApplied);
        }
    }

    private void keepIf(
            boolean better, int slot, long eventMillis, double itsVolts, double itsCelsius, boolean loadApplied) {
        if (better) {
            taken[slot] = true;
            times[slot] = eventMillis;
            volts[slot] = itsVolts;
            celsius[slot] = itsCelsius;
            loads[slot] = loadApplied;
        }
    }

    /** What is to be drawn, in order of time, each point once. */
    List<TracePoint> points() {
        List<TracePoint> points = new ArrayList<>();
        for (int slot = 0; slot < taken.length; slot++) {
            if (taken[slot]) {
                points.add(new TracePoint(times[slot], volts[slot], celsius[slot], loads[slot]));
            }
        }
        points.sort(Comparator.comparingLong(TracePoint::eventMillis));
        List<TracePoint> once = new ArrayList<>(points.size());
        for (TracePoint point : points) {
            if (once.isEmpty() || once.get(once.size() - 1).eventMillis() != point.eventMillis()) {
                once.add(point);
            }
        }
        return once;
    }
}
