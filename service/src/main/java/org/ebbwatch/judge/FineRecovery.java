package org.ebbwatch.judge;

import org.ebbwatch.judge.estimate.MinuteMeans;

/**
 * What means over minutes tell of a recovery too small for single readings: that of a cell so empty that hardly anything
 * comes back. Offset, reference and divider cancel in the difference of two means of one channel.
 *
 * <p>A voltage that only drifts must not pass for a recovery, so a difference of means counts only within the time in which
 * cells recover, only if much of it came early, and only above what the mean wandered in the hour before and above a tenth
 * of U. Later it must be twice U and lift the cell to twice its voltage on the load.
 */
final class FineRecovery {
    private static final int MINUTES = 10;
    private static final int HOUR_MINUTES = 60;
    private static final int LEAST_MINUTES = 3;
    private static final int SHAPE_MINUTES = 30;
    private static final double EARLY_SHARE = 0.4;
    private static final double PROOF_FACTOR = 10;
    private static final double ABSENCE_FACTOR = 6;
    private static final double DITHERED_SHARE = 0.1;
    private static final double DRIFT_SHARE = 0.1;
    private static final double ABOVE_LOAD = 1.2;
    private static final double ABOVE_LOAD_LATE = 2;
    private static final double LATE_FACTOR = 2;
    private static final double AT_LOAD_FRACTION = 0.2;
    private static final double AT_LOAD_VOLTS = 0.010;
    private static final int COLLAPSE_MINUTES = 5;
    private static final double COLLAPSE_FROM_VOLTS = 0.05;
    private static final double COLLAPSE_FRACTION = 0.25;

    /** A mean that stood, its standard error, and how far it wandered. */
    private record Level(double volts, double error, double spread) {
        static final Level UNKNOWN = new Level(Double.NaN, Double.NaN, Double.NaN);

        boolean isKnown() {
            return !Double.isNaN(error);
        }
    }

    private final MinuteMeans before = new MinuteMeans(HOUR_MINUTES);
    private final MinuteMeans open = new MinuteMeans(MINUTES);
    private Level onLoad = Level.UNKNOWN;
    private Level bonded = Level.UNKNOWN;
    private boolean wasBonded;
    private double firstVolts = Double.NaN;
    private double expandedVolts;
    private double coarseness;
    private int openMinutes;
    private boolean shown;

    private double lastVolts = Double.NaN;
    private double collapsedFromVolts = Double.NaN;

    /** The load has just gone on. */
    void loadOn() {
        before.clear();
        lastVolts = Double.NaN;
        collapsedFromVolts = Double.NaN;
    }

    /** The load has just gone off. */
    void loadOff() {
        onLoad = level();
        bonded = Level.UNKNOWN;
        begin(false);
    }

    /** The bond has just been parted. */
    void parted() {
        bonded = level();
        begin(true);
    }

    /** Levels before and after cannot be compared. */
    void forget() {
        before.clear();
        onLoad = Level.UNKNOWN;
        bonded = Level.UNKNOWN;
        shown = false;
    }

    private Level level() {
        return before.size() < LEAST_MINUTES
                ? Level.UNKNOWN
                : new Level(before.mean(MINUTES), before.standardError(MINUTES), before.spread(MINUTES));
    }

    private void begin(boolean fromBond) {
        before.clear();
        open.clear();
        wasBonded = fromBond;
        firstVolts = Double.NaN;
        openMinutes = 0;
        shown = false;
    }

    /** Follows one known reading with the load on or the leads bonded. */
    void beforeOpening(Reading now, boolean loaded) {
        before.add(now.volts(), now.stepMillis());
        if (!loaded) {
            return;
        }
        boolean settled = before.size() >= COLLAPSE_MINUTES && now.stepMillis() > 0;
        double least = COLLAPSE_FROM_VOLTS + LoadWatch.STEP_FACTOR * now.differenceVolts();
        if (settled && lastVolts > least && now.volts() < COLLAPSE_FRACTION * lastVolts) {
            collapsedFromVolts = lastVolts;
        } else if (now.volts() > collapsedFromVolts / 2) {
            collapsedFromVolts = Double.NaN;
        }
        lastVolts = now.volts();
    }

    /**
     * Follows one known reading with nothing across the cell.
     *
     * @param inTime whether cells still recover so long after the opening
     */
    void follow(Reading now, boolean inTime) {
        expandedVolts = now.expandedVolts();
        double resolution = now.scan().resolutionVolts();
        boolean dithered = now.differenceVolts() > StrictMath.sqrt(2) * resolution;
        coarseness = dithered ? DITHERED_SHARE * resolution : resolution;
        if (!open.add(now.volts(), now.stepMillis())) {
            return;
        }
        openMinutes++;
        if (openMinutes == MINUTES) {
            firstVolts = open.mean(MINUTES);
        }
        if (openMinutes < SHAPE_MINUTES) {
            return;
        }
        if (shown) {
            shown = rise(reference()) > needed(reference()) / 2;
        } else if (inTime) {
            shown = isRecovery(reference()) && (!wasBonded || isAboveLoad(ABOVE_LOAD));
        } else {
            shown = rise(reference()) > needed(reference()) + LATE_FACTOR * expandedVolts
                    && isAboveLoad(ABOVE_LOAD_LATE);
        }
    }

    private Level reference() {
        return wasBonded ? bonded : onLoad;
    }

    private double rise(Level from) {
        return open.mean(MINUTES) - from.volts();
    }

    private boolean isRecovery(Level from) {
        double rise = rise(from);
        return rise > needed(from) && firstVolts - from.volts() >= EARLY_SHARE * rise;
    }

    private boolean isAboveLoad(double times) {
        return rise(onLoad) > Math.abs(onLoad.volts()) * (times - 1) + needed(onLoad);
    }

    /** NaN, which nothing exceeds, where a level is not known. */
    private double needed(Level from) {
        return uncertainty(from, PROOF_FACTOR) + Math.max(coarseness, DRIFT_SHARE * expandedVolts);
    }

    private double uncertainty(Level from, double factor) {
        double error = open.standardError(MINUTES);
        return factor * StrictMath.sqrt(from.error() * from.error() + error * error) + from.spread();
    }

    /** Whether the means show that the cell came back by more than a load still on could explain. */
    boolean isShown() {
        return shown;
    }

    /**
     * Whether a recovery would have been seen by now if the load were off, and none was.
     *
     * @param leastFraction an empty cell comes back by at least this share of its voltage on the load
     */
    boolean isMissed(double leastFraction) {
        if (!onLoad.isKnown() || !Double.isNaN(collapsedFromVolts)) {
            return true;
        }
        return leastFraction * onLoad.volts() > resolved() && isFlat();
    }

    /** Whether the means show no rise at all, or there are none to show one. */
    boolean isFlat() {
        return !(rise(onLoad) >= resolved());
    }

    private double resolved() {
        return uncertainty(onLoad, ABSENCE_FACTOR) + coarseness;
    }

    /** Whether it stands, well above nought, where the load held it: as a cell does whose load is still on. */
    boolean isWhereTheLoadHeldIt() {
        double held = onLoad.volts();
        return held > AT_LOAD_VOLTS + LoadWatch.STEP_FACTOR * expandedVolts
                && Math.abs(rise(onLoad)) < AT_LOAD_FRACTION * held;
    }

    /** Whether it fell to nothing on its load between two readings, as no cell does. */
    boolean hasCollapsed() {
        return !Double.isNaN(collapsedFromVolts);
    }
}
