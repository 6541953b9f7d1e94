package org.ebbwatch.judge;

import org.ebbwatch.judge.procedure.CellCard;

/**
 * Compares a channel before and after a stretch in which nothing was seen. What charge and relaxation cannot explain
 * suggests another cell on the channel, or one that cut off unseen.
 */
final class GapWatch {
    private static final long SETTLED_ON_MILLIS = 600_000;
    private static final long SETTLED_OFF_MILLIS = 30_000;
    private static final double LEAST_VOLTS = 0.15;
    private static final double VOLTS_PER_SHARE = 5;
    private static final double STEEP_VOLTS = 3.0;
    private static final double STEEP_SHARE = 0.0009;
    private static final double REST_RISE_VOLTS = 1.0;
    private static final long RESTED_MILLIS = 3_600_000;

    /** What a comparison across a gap suggests. */
    enum Suspicion {
        NONE,
        SWAPPED,
        CUT_OFF
    }

    private final CellCard card;
    private double onVolts = Double.NaN;
    private double offVolts = Double.NaN;
    private long offForMillis;
    private boolean pendingOn;
    private boolean pendingOff;
    private long gapMillis;
    private double onBefore;
    private double offBefore;
    private boolean offWasRested;

    GapWatch(CellCard card) {
        this.card = card;
    }

    /** Readings are missing; {@code mostMillis} adds up over gaps that follow each other. */
    void gap(long mostMillis, boolean loadWasOn) {
        if (!pendingOn && !pendingOff) {
            gapMillis = 0;
            onBefore = onVolts;
            offBefore = offVolts;
            offWasRested = offForMillis >= RESTED_MILLIS;
        }
        gapMillis += mostMillis;
        pendingOn = loadWasOn && !Double.isNaN(onBefore);
        pendingOff = !loadWasOn && !Double.isNaN(offBefore);
    }

    /** Whether a comparison is still owed. */
    boolean isPending() {
        return pendingOn || pendingOff;
    }

    /** The phase changed; a comparison that is still owed is given up. */
    void settle() {
        pendingOn = false;
        pendingOff = false;
    }

    /** Voltages before and after cannot be compared any more, for a reason that is known. */
    void forget() {
        onVolts = Double.NaN;
        offVolts = Double.NaN;
        settle();
    }

    /** The volts that stood before the gap, in the state the comparison is about. */
    double before() {
        return pendingOn ? onBefore : offBefore;
    }

    /** Follows one believable voltage; {@code forMillis} is how long the load has been as it is, without a gap. */
    Suspicion follow(double volts, boolean loadOn, long forMillis, double expandedVolts) {
        Suspicion found = Suspicion.NONE;
        if (loadOn && pendingOn) {
            found = comparedOn(volts, forMillis);
        } else if (!loadOn && pendingOff && forMillis >= SETTLED_OFF_MILLIS) {
            pendingOff = false;
            found = comparedOff(volts, expandedVolts);
        }
        if (loadOn && !pendingOn) {
            onVolts = volts;
        } else if (!loadOn && !pendingOff) {
            offVolts = volts;
            offForMillis = forMillis;
        }
        return found;
    }

    private Suspicion comparedOn(double volts, long forMillis) {
        double share = onBefore / card.loadOhms() * gapMillis / 3.6e6 / card.ratedAmpereHours();
        if (onBefore > 1.2 && volts < 0.3 && share < 0.0003) {
            pendingOn = false;
            return Suspicion.CUT_OFF;
        }
        if (forMillis < SETTLED_ON_MILLIS) {
            return Suspicion.NONE;
        }
        pendingOn = false;
        double change = volts - onBefore;
        double further = share + onBefore / card.loadOhms() * forMillis / 3.6e6 / card.ratedAmpereHours();
        boolean steep = onBefore < STEEP_VOLTS && further > STEEP_SHARE;
        double fallAllowed = steep ? onBefore : LEAST_VOLTS + VOLTS_PER_SHARE * further;
        double riseAllowed = onBefore > STEEP_VOLTS ? LEAST_VOLTS : 2 * LEAST_VOLTS + 0.1 * onBefore;
        return change > riseAllowed || -change > fallAllowed ? Suspicion.SWAPPED : Suspicion.NONE;
    }

    private Suspicion comparedOff(double volts, double expandedVolts) {
        double change = volts - offBefore;
        boolean fell = -change > Math.max(LoadWatch.STEP_FACTOR * expandedVolts, 0.02 + 0.05 * Math.abs(offBefore));
        boolean rose = offWasRested && change > REST_RISE_VOLTS;
        return fell || rose ? Suspicion.SWAPPED : Suspicion.NONE;
    }
}
