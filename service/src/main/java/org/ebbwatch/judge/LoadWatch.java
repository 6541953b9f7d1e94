package org.ebbwatch.judge;

import java.util.Locale;
import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.Outcome.Wish;

/**
 * Knows whether the load is on, whether it should be, and what the terminals did when it was switched.
 *
 * <p>LOAD_LOST: the load is on and no sag followed, no current flows, or the voltage climbs again within the hour. Steps are
 * held against the noise of the channel, not against its absolute uncertainty. Where a person's hands put the load on and
 * off, they are given five minutes to say so, and {@link HandStep} mostly sees it before.
 */
final class LoadWatch {
    /** A step must exceed the expanded uncertainty of a difference by so much: the rule of five. */
    static final double STEP_FACTOR = 5;

    private static final long SAG_MILLIS = 60_000;
    private static final long FAINT_SAG_MILLIS = 1_800_000;
    private static final long HANDS_MILLIS = 300_000;
    private static final double LEAST_CELL_OHMS = 0.03;
    private static final double LARGEST_CELL_OHMS = 0.005;
    private static final double LEAST_OHM_AMPERE_HOURS = 0.12;
    private static final long CLIMB_MILLIS = 30_000;
    private static final double CLIMB_FORGOTTEN_MILLIS = 3_600_000;
    private static final double LEAST_CLIMB_VOLTS = 0.010;
    private static final double CLIMB_FRACTION = 0.3;
    private static final double AMPERES_FRACTION = 0.3;
    private static final double AMPERES_TELL_VOLTS = 0.5;
    private static final long RETRY_MILLIS = 10_000;
    private static final long REFUSED_MILLIS = 60_000;
    private static final double HIGHEST_FORGOTTEN_MILLIS = 600_000;
    private static final long NEVER = Long.MIN_VALUE / 2;

    private final LoadedCell cell;
    private final FindingBook findings;
    private final FineSag fine = new FineSag();

    private boolean wanted;
    private boolean handOn;
    private boolean on;
    private double recognisedFromVolts = Double.NaN;
    private long switchedMillis;
    private long askedMillis = NEVER;
    private long deniedSinceMillis = NEVER;
    private double beforeVolts = Double.NaN;
    private double openedAtVolts = Double.NaN;
    private boolean recognisedOff;
    private double smoothVolts = Double.NaN;
    private double highestOpenVolts = Double.NaN;
    private double lowestVolts = Double.NaN;
    private long climbingSinceMillis = NEVER;
    private long idleSinceMillis = NEVER;
    private boolean hasBeenOn;
    private boolean drew;
    private boolean sagJudged;

    LoadWatch(LoadedCell cell, FindingBook findings) {
        this.cell = cell;
        this.findings = findings;
    }

    /** The load should be on, or off, from now; asks the board at once where it switches and {@code mayAsk}. */
    void want(boolean closed, long millis, boolean mayAsk) {
        wanted = closed;
        askedMillis = NEVER;
        deniedSinceMillis = NEVER;
        if (mayAsk) {
            persist(millis, true);
        }
    }

    void byHand(boolean closed) {
        handOn = closed;
        recognisedFromVolts = Double.NaN;
    }

    /** Nobody said so, but it was seen to come off; {@code fromVolts} is what it had stood at. */
    void seenOff(double fromVolts) {
        handOn = false;
        recognisedFromVolts = fromVolts;
    }

    boolean isHandOn() {
        return handOn;
    }

    boolean wanted() {
        return wanted;
    }

    boolean isOn() {
        return on;
    }

    boolean hasBeenOn() {
        return hasBeenOn;
    }

    /** Whether a load is on, or is about to be, that a person could take off. */
    boolean canBeTakenOff() {
        return on || wanted || handOn;
    }

    long switchedMillis() {
        return switchedMillis;
    }

    /** The last voltage seen before the load was switched. */
    double beforeVolts() {
        return beforeVolts;
    }

    /** From where on a recovery proves that the load is off: not by the step from which that was only concluded. */
    double openedAtVolts() {
        return openedAtVolts;
    }

    /** Whether it was seen to come off, and nobody said so. */
    boolean isRecognisedOff() {
        return recognisedOff;
    }

    /** Whether it has been seen to draw anything since it went on. */
    boolean hasDrawn() {
        return drew;
    }

    /** Takes the state of the switch; says whether it changed with this scan. */
    boolean follow(Scan scan) {
        boolean now = scan.loadApplied() || (!cell.switched() && handOn);
        if (now == on) {
            return false;
        }
        on = now;
        hasBeenOn |= now;
        switchedMillis = scan.eventMillis();
        recognisedOff = !now && !Double.isNaN(recognisedFromVolts);
        openedAtVolts = smoothVolts;
        beforeVolts = now ? Math.max(smoothVolts, highestOpenVolts) : recognisedOff ? recognisedFromVolts : smoothVolts;
        recognisedFromVolts = Double.NaN;
        forgetLevels();
        fine.switched(now);
        drew = false;
        sagJudged = false;
        return true;
    }

    /** Voltages before and after cannot be compared, and the board may not have been asked meanwhile. */
    void interrupted() {
        forgetLevels();
        fine.forget();
        sagJudged = true;
        askedMillis = NEVER;
        deniedSinceMillis = NEVER;
    }

    private void forgetLevels() {
        smoothVolts = Double.NaN;
        highestOpenVolts = Double.NaN;
        lowestVolts = Double.NaN;
        climbingSinceMillis = NEVER;
        idleSinceMillis = NEVER;
    }

    /**
     * Follows one believable voltage.
     *
     * @param amperes NaN where no current is measured
     * @param differenceVolts the expanded uncertainty of a difference
     * @param announced whether a person is at work on the channel
     */
    void judge(long millis, double volts, double amperes, double differenceVolts, long stepMillis, boolean announced) {
        if (Double.isNaN(volts)) {
            return;
        }
        smoothVolts = Double.isNaN(smoothVolts) ? volts : smoothVolts + (volts - smoothVolts) / 4;
        fine.follow(volts, stepMillis, on);
        if (!on) {
            double forgotten = (highestOpenVolts - smoothVolts) * Math.min(1, stepMillis / HIGHEST_FORGOTTEN_MILLIS);
            highestOpenVolts =
                    Double.isNaN(highestOpenVolts) ? smoothVolts : Math.max(smoothVolts, highestOpenVolts - forgotten);
            return;
        }
        double due = cell.amperesAt(volts);
        boolean flows = amperes > AMPERES_FRACTION * due && amperes > 0;
        drew |= flows || beforeVolts - volts > STEP_FACTOR * differenceVolts;
        if (announced) {
            climbingSinceMillis = NEVER;
            idleSinceMillis = NEVER;
            return;
        }
        sag(millis, volts, differenceVolts);
        if (Double.isNaN(amperes)) {
            climb(millis, differenceVolts, stepMillis);
        } else {
            current(millis, volts, amperes, flows);
        }
    }

    /**
     * A sag must follow the load, sooner where even that of a large cell would stand out of the noise, later where it would
     * not: then means over minutes are waited for.
     */
    private void sag(long millis, double volts, double differenceVolts) {
        double least = STEP_FACTOR * differenceVolts;
        long allowed = isFaint(least, differenceVolts) ? FAINT_SAG_MILLIS : cell.switched() ? SAG_MILLIS : HANDS_MILLIS;
        if (sagJudged || !(beforeVolts > 1) || millis - switchedMillis < allowed) {
            return;
        }
        boolean sags = beforeVolts - smoothVolts > differenceVolts;
        if (!drew && sags && fine.mayBeKnown() && millis - switchedMillis < FAINT_SAG_MILLIS) {
            return;
        }
        sagJudged = true;
        if (!drew && !fine.isSeen(differenceVolts)) {
            lost(beforeVolts - volts, least, "V", "no sag after the load went on");
        }
    }

    private boolean isFaint(double least, double differenceVolts) {
        double amperes = cell.amperesAt(beforeVolts);
        if (!fine.mayBeKnown()) {
            return amperes * LEAST_CELL_OHMS < least;
        }
        return amperes * LARGEST_CELL_OHMS < Math.min(least, fine.neededVolts(differenceVolts));
    }

    private void current(long millis, double volts, double amperes, boolean flows) {
        if (flows || volts < AMPERES_TELL_VOLTS) {
            idleSinceMillis = NEVER;
        } else if (idleSinceMillis == NEVER) {
            idleSinceMillis = millis;
        } else if (millis - idleSinceMillis >= patience()) {
            lost(amperes, AMPERES_FRACTION * cell.amperesAt(volts), "A", "no current with the load on");
        }
    }

    /** On a fixed load a cell's voltage falls; one that climbs quickly is not on its load any more. */
    private void climb(long millis, double differenceVolts, long stepMillis) {
        lowestVolts += (smoothVolts - lowestVolts) * Math.min(1, stepMillis / CLIMB_FORGOTTEN_MILLIS);
        if (Double.isNaN(lowestVolts) || smoothVolts < lowestVolts) {
            lowestVolts = smoothVolts;
            climbingSinceMillis = NEVER;
            return;
        }
        double least = Math.max(LEAST_CLIMB_VOLTS, 4 * STEP_FACTOR * differenceVolts);
        double limit = lowestVolts > 1 ? least : Math.max(least, CLIMB_FRACTION * lowestVolts);
        if (smoothVolts - lowestVolts <= limit) {
            climbingSinceMillis = NEVER;
        } else if (climbingSinceMillis == NEVER) {
            climbingSinceMillis = millis;
        } else if (millis - climbingSinceMillis >= patience()) {
            lost(smoothVolts - lowestVolts, limit, "V", "the voltage climbs with the load on");
        }
    }

    private long patience() {
        return cell.switched() ? CLIMB_MILLIS : HANDS_MILLIS;
    }

    private void lost(double seen, double limit, String unit, String why) {
        findings.raise(
                FindingKind.LOAD_LOST,
                seen,
                limit,
                unit,
                "The load draws nothing: %3$s (%1$.4f %4$s, limit %2$.4f %4$s).",
                why,
                unit);
        handOn = false;
    }

    /** Asks again while the board does otherwise, and says so when it will not. */
    void persist(long millis, boolean mayClose) {
        if (!cell.switched() || on == wanted || (wanted && !mayClose)) {
            deniedSinceMillis = NEVER;
            return;
        }
        if (deniedSinceMillis == NEVER) {
            deniedSinceMillis = millis;
        }
        if (millis - deniedSinceMillis >= REFUSED_MILLIS) {
            findings.raise(
                    wanted ? FindingKind.LOAD_LOST : FindingKind.LOAD_STUCK,
                    String.format(
                            Locale.ROOT,
                            "The board keeps the load %s though it was asked otherwise.",
                            on ? "on" : "off"));
        }
        if (millis - askedMillis >= RETRY_MILLIS) {
            askedMillis = millis;
            findings.wish(wanted ? Wish.CLOSE_LOAD : Wish.OPEN_LOAD);
        }
    }

    /** A cell comes back within the hour by at least this share of its voltage on the load, however empty it is. */
    double leastRecoveryOfEmpty() {
        return LEAST_OHM_AMPERE_HOURS / cell.ratedAmpereHours() * cell.amperesAt(1);
    }

    /** Whether a recovery should stand out of the noise when the load goes off. */
    boolean recoveryShouldShow(double differenceVolts) {
        return !(beforeVolts > 1) || cell.amperesAt(beforeVolts) * LEAST_CELL_OHMS > STEP_FACTOR * differenceVolts;
    }
}
