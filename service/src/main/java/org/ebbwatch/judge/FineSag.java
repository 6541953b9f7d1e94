package org.ebbwatch.judge;

import org.ebbwatch.judge.estimate.MinuteMeans;

/**
 * What means over minutes tell of a sag too small for single readings: that of a large cell on a gentle load behind much
 * noise.
 */
final class FineSag {
    private static final int MINUTES = 10;
    private static final int LEAST_MINUTES = 3;
    private static final double FACTOR = 2 * LoadWatch.STEP_FACTOR;
    private static final double HINT = 0.4;

    private final MinuteMeans open = new MinuteMeans(MINUTES);
    private final MinuteMeans loaded = new MinuteMeans(MINUTES);

    /** The load went on or off: what was gathered as that it goes to begins anew. */
    void switched(boolean on) {
        (on ? loaded : open).clear();
    }

    /** Voltages before and after cannot be compared. */
    void forget() {
        open.clear();
        loaded.clear();
    }

    void follow(double volts, long stepMillis, boolean on) {
        (on ? loaded : open).add(volts, stepMillis);
    }

    /** Whether both means are known. */
    boolean isKnown() {
        return open.size() >= LEAST_MINUTES && loaded.size() >= LEAST_MINUTES;
    }

    /** Whether it fell by so much that nothing drawn is not the likelier reading of it. */
    boolean isSeen(double differenceVolts) {
        return isKnown() && open.mean(MINUTES) - loaded.mean(MINUTES) > HINT * neededVolts(differenceVolts);
    }

    /** A smaller sag cannot be told from noise yet; infinite where a mean is not known. */
    double neededVolts(double differenceVolts) {
        if (!isKnown()) {
            return Double.POSITIVE_INFINITY;
        }
        double before = open.standardError(MINUTES);
        double after = loaded.standardError(MINUTES);
        return FACTOR * StrictMath.sqrt(before * before + after * after) + differenceVolts / 2;
    }

    /** Whether the open voltage was seen long enough for a mean. */
    boolean mayBeKnown() {
        return open.size() >= LEAST_MINUTES;
    }
}
