package org.ebbwatch.judge;

/**
 * Compares a channel before and after a stretch in which nothing was seen. What charge and relaxation cannot explain
 * suggests another cell on the channel, or one that cut off unseen.
 *
 * <p>On the load a voltage falls no further than the charge that may have left explains, and hardly rises. Off the load it
 * falls hardly at all, and a recovery slows down: in a gap a tenth as long as the rest so far it cannot rise by more than a
 * few tenths of what it had. All bounds: common practice, no source; the recoveries they were held against are named in
 * docs/procedure.md.
 */
final class GapWatch {
    private static final long SETTLED_ON_MILLIS = 600_000;
    private static final long SETTLED_OFF_MILLIS = 30_000;
    private static final double LEAST_VOLTS = 0.15;
    private static final double VOLTS_PER_SHARE = 5;
    private static final double STEEP_VOLTS = 3.0;
    private static final double STEEP_SHARE = 0.0009;
    private static final double COLLAPSE_FROM_VOLTS = 1.2;
    private static final double COLLAPSE_TO_VOLTS = 0.3;
    private static final double OPEN_RISE_VOLTS = 0.5;
    private static final double REST_RISE_VOLTS = 1.0;
    private static final double REST_RISE_FACTOR = 3;
    private static final long RESTED_MILLIS = 3_600_000;
    private static final long ENDLESS_MILLIS = 1L << 40;

    /** What a comparison across a gap suggests. */
    enum Suspicion {
        NONE,
        SWAPPED,
        CUT_OFF
    }

    private enum Owed {
        NOTHING,
        /** The load was on before the gap. */
        ON,
        /** As before, and the open-circuit voltage after the gap has passed. */
        ON_OPEN_PASSED,
        /** The load was off before the gap. */
        OFF
    }

    private final LoadedCell cell;
    private Owed owed = Owed.NOTHING;
    private double onVolts = Double.NaN;
    private double offVolts = Double.NaN;
    private long offForMillis;
    private long gapMillis;
    private double before = Double.NaN;
    private long beforeForMillis;

    GapWatch(LoadedCell cell) {
        this.cell = cell;
    }

    /** Readings are missing; {@code mostMillis} adds up over gaps that follow each other. */
    void gap(long mostMillis, boolean loadWasOn) {
        if (owed == Owed.NOTHING) {
            gapMillis = 0;
            before = loadWasOn ? onVolts : offVolts;
            beforeForMillis = offForMillis;
            if (!Double.isNaN(before)) {
                owed = loadWasOn ? Owed.ON : Owed.OFF;
            }
        }
        gapMillis = Math.min(ENDLESS_MILLIS, gapMillis + Math.min(ENDLESS_MILLIS, mostMillis));
    }

    /** Whether an open-circuit voltage must still be compared before anything may rest on it. */
    boolean isOwed() {
        return owed == Owed.ON || owed == Owed.OFF;
    }

    /** Voltages before and after cannot be compared any more, for a reason that is known. */
    void forget() {
        onVolts = Double.NaN;
        offVolts = Double.NaN;
        owed = Owed.NOTHING;
    }

    /** The volts that stood before the gap. */
    double before() {
        return before;
    }

    /**
     * Follows one believable voltage.
     *
     * @param steadyMillis for so long the load has been as it is, without a gap
     * @param switchedForMillis for so long it has been as it is, gaps or not
     */
    Suspicion follow(double volts, double expandedVolts, boolean loadOn, long steadyMillis, long switchedForMillis) {
        Suspicion found = compared(volts, expandedVolts, loadOn, steadyMillis);
        if (owed == Owed.NOTHING) {
            onVolts = loadOn ? volts : Double.NaN;
            offVolts = loadOn ? Double.NaN : volts;
            offForMillis = switchedForMillis;
        }
        return found;
    }

    private Suspicion compared(double volts, double expandedVolts, boolean loadOn, long steadyMillis) {
        if (owed == Owed.OFF && loadOn) {
            owed = Owed.NOTHING;
        } else if (owed == Owed.OFF && steadyMillis >= SETTLED_OFF_MILLIS) {
            owed = Owed.NOTHING;
            return hasFallenAtRest(volts, expandedVolts) || volts - before > restRise()
                    ? Suspicion.SWAPPED
                    : Suspicion.NONE;
        } else if (owed == Owed.ON && !loadOn && steadyMillis >= SETTLED_OFF_MILLIS) {
            owed = Owed.ON_OPEN_PASSED;
            boolean risen = volts > Math.max(before, STEEP_VOLTS) + OPEN_RISE_VOLTS;
            return risen || before - volts > fallOnLoad(0) ? Suspicion.SWAPPED : Suspicion.NONE;
        } else if ((owed == Owed.ON || owed == Owed.ON_OPEN_PASSED) && loadOn) {
            return comparedOn(volts, steadyMillis);
        }
        return Suspicion.NONE;
    }

    private Suspicion comparedOn(double volts, long steadyMillis) {
        boolean collapsed = before > COLLAPSE_FROM_VOLTS && volts < COLLAPSE_TO_VOLTS;
        if (collapsed && before - volts > fallOnLoad(0)) {
            owed = Owed.NOTHING;
            return Suspicion.CUT_OFF;
        }
        if (steadyMillis < SETTLED_ON_MILLIS) {
            return Suspicion.NONE;
        }
        owed = Owed.NOTHING;
        double riseAllowed = before > STEEP_VOLTS ? LEAST_VOLTS : 2 * LEAST_VOLTS + 0.1 * before;
        boolean unlike = volts - before > riseAllowed || before - volts > fallOnLoad(steadyMillis);
        return unlike ? Suspicion.SWAPPED : Suspicion.NONE;
    }

    /** How far the voltage may have fallen on its load in the gap and {@code furtherMillis}. */
    private double fallOnLoad(long furtherMillis) {
        double hours = (gapMillis + furtherMillis) / 3.6e6;
        double share = cell.amperesAt(before) * hours / cell.ratedAmpereHours();
        boolean steep = before < STEEP_VOLTS && share > STEEP_SHARE;
        return steep ? before : LEAST_VOLTS + VOLTS_PER_SHARE * share;
    }

    private boolean hasFallenAtRest(double volts, double expandedVolts) {
        double least = Math.max(LoadWatch.STEP_FACTOR * expandedVolts, 0.02 + 0.05 * Math.abs(before));
        return before - volts > least;
    }

    private double restRise() {
        double slowing = LEAST_VOLTS + REST_RISE_FACTOR * before * gapMillis / Math.max(1, beforeForMillis);
        return beforeForMillis >= RESTED_MILLIS ? Math.min(REST_RISE_VOLTS, slowing) : slowing;
    }
}
