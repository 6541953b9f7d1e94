package org.ebbwatch.judge;

import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.procedure.CellCard;

/**
 * Knows whether the load is on, whether it should be, and what the terminals did when it was switched.
 *
 * <p>LOAD_LOST: the load is on and either no sag followed or the voltage climbs again. LOAD_STUCK: the load is off and no
 * recovery followed. Steps are held against the noise of the channel, not against its absolute uncertainty.
 */
final class LoadWatch {
    /** A step must exceed the expanded uncertainty of a difference by so much: the rule of five. */
    static final double STEP_FACTOR = 5;

    private static final long SAG_MILLIS = 60_000;
    private static final long CLIMB_MILLIS = 30_000;
    private static final long RETRY_MILLIS = 10_000;
    private static final long REFUSED_MILLIS = 60_000;
    private static final double LEAST_CLIMB_VOLTS = 0.010;
    private static final double CLIMB_FRACTION = 0.3;
    private static final double AMPERES_FRACTION = 0.3;

    private final CellCard card;
    private final FindingBook findings;

    private boolean wanted;
    private boolean handOn;
    private boolean on;
    private long switchedMillis;
    private long wantedMillis;
    private long askedMillis = Long.MIN_VALUE / 2;
    private double beforeVolts = Double.NaN;
    private double lowestVolts = Double.NaN;
    private double smoothVolts = Double.NaN;
    private long climbingSinceMillis = -1;
    private boolean drew;

    LoadWatch(CellCard card, FindingBook findings) {
        this.card = card;
        this.findings = findings;
    }

    /** The load should be on, or off, from now; asks the board where it switches. */
    void want(boolean closed, long millis) {
        wanted = closed;
        wantedMillis = millis;
        askedMillis = Long.MIN_VALUE / 2;
        if (card.switched() && on != closed) {
            ask(millis);
        }
    }

    void byHand(boolean closed) {
        handOn = closed;
    }

    boolean wanted() {
        return wanted;
    }

    boolean isOn() {
        return on;
    }

    long switchedMillis() {
        return switchedMillis;
    }

    /** The last voltage seen before the load was switched. */
    double beforeVolts() {
        return beforeVolts;
    }

    /** Whether a hand-loaded cell is known to be off, or a switched one is off because it should be. */
    boolean isOffByIntent() {
        return !on && !wanted;
    }

    /** Takes the state of the switch; says whether it changed with this scan. */
    boolean follow(Scan scan) {
        boolean now = card.switched() ? scan.loadApplied() : handOn;
        boolean changed = now != on;
        if (changed) {
            on = now;
            switchedMillis = scan.eventMillis();
            beforeVolts = smoothVolts;
            smoothVolts = Double.NaN;
            lowestVolts = Double.NaN;
            climbingSinceMillis = -1;
            drew = false;
        }
        return changed;
    }

    /** Follows one believable voltage; {@code differenceVolts} is the expanded uncertainty of a difference. */
    void judge(Scan scan, double volts, double amperes, double differenceVolts) {
        persist(scan);
        if (Double.isNaN(volts)) {
            return;
        }
        smoothVolts = Double.isNaN(smoothVolts) ? volts : smoothVolts + (volts - smoothVolts) / 4;
        if (!on) {
            return;
        }
        long since = scan.eventMillis() - switchedMillis;
        drew |= amperes > AMPERES_FRACTION * volts / card.loadOhms() && amperes > 0;
        drew |= beforeVolts - volts > STEP_FACTOR * differenceVolts;
        if (!drew && beforeVolts > 1 && since >= SAG_MILLIS && since < 2 * SAG_MILLIS) {
            lost(beforeVolts - volts, STEP_FACTOR * differenceVolts, "no sag after the load went on");
        }
        climb(scan, differenceVolts);
    }

    /** On a fixed load a cell's voltage only falls; one that climbs is not on its load any more. */
    private void climb(Scan scan, double differenceVolts) {
        if (Double.isNaN(lowestVolts) || smoothVolts < lowestVolts) {
            lowestVolts = smoothVolts;
            climbingSinceMillis = -1;
            return;
        }
        double least = Math.max(LEAST_CLIMB_VOLTS, 4 * STEP_FACTOR * differenceVolts);
        double limit = lowestVolts > 1 ? least : Math.max(least, CLIMB_FRACTION * lowestVolts);
        if (smoothVolts - lowestVolts <= limit) {
            climbingSinceMillis = -1;
        } else if (climbingSinceMillis < 0) {
            climbingSinceMillis = scan.eventMillis();
        } else if (scan.eventMillis() - climbingSinceMillis >= CLIMB_MILLIS) {
            lost(smoothVolts - lowestVolts, limit, "the voltage climbs with the load on");
        }
    }

    private void lost(double seen, double limit, String why) {
        findings.raise(
                FindingKind.LOAD_LOST,
                seen,
                limit,
                "V",
                "The load draws nothing: %3$s (%1$.4f V, limit %2$.4f V).",
                why);
    }

    /** Asks again while the board does otherwise, and says so when it will not. */
    private void persist(Scan scan) {
        if (!card.switched() || on == wanted) {
            return;
        }
        long millis = scan.eventMillis();
        if (millis - wantedMillis >= REFUSED_MILLIS && millis - switchedMillis >= REFUSED_MILLIS) {
            findings.raise(
                    wanted ? FindingKind.LOAD_LOST : FindingKind.LOAD_STUCK,
                    String.format("The board keeps the load %s though it was asked otherwise.", on ? "on" : "off"));
        }
        if (millis - askedMillis >= RETRY_MILLIS) {
            ask(millis);
        }
    }

    private void ask(long millis) {
        askedMillis = millis;
        findings.wish(wanted ? Wish.CLOSE_LOAD : Wish.OPEN_LOAD);
    }
}
