package org.ebbwatch.judge;

import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.GapWatch.Suspicion;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.estimate.ChargeMeter;
import org.ebbwatch.judge.estimate.NoiseMeter;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Procedure;

/**
 * All that is read from one channel, scan by scan. Raises every finding that rests on readings alone; what follows from
 * them for the phase and the load is {@link Passage}'s.
 */
final class Channel {
    private static final double REVERSED_VOLTS = -0.02;
    private static final double STRING_VOLTS = 1.0;
    private static final long STRING_RETRY_MILLIS = 10_000;
    private static final long NEVER = Long.MIN_VALUE / 2;

    private final FindingBook findings;
    private final LoadedCell cell;
    private final SensorWatch sensors;
    private final NoiseMeter noise = new NoiseMeter();
    private final ChargeMeter charge;
    private final LoadWatch load;
    private final HandStep hand;
    private final DrainWatch drain;
    private final GapWatch gaps;
    private final HeatWatch heat;
    private final OwnWarmth own;
    private final Confirmation reversed = new Confirmation();

    private Procedure procedure;
    private Suspicion suspicion = Suspicion.NONE;
    private boolean weighingReversal;
    private long steadySinceMillis;
    private long announcedUntilMillis = NEVER;
    private long stringAskedMillis = NEVER;

    Channel(CellCard card, Procedure procedure, FindingBook findings) {
        this.findings = findings;
        this.cell = new LoadedCell(card);
        this.procedure = procedure;
        this.sensors = new SensorWatch(procedure.plausible());
        this.charge = new ChargeMeter(cell::expandedLoadShare);
        this.load = new LoadWatch(cell, findings);
        this.hand = new HandStep(cell);
        this.drain = new DrainWatch(cell, findings, charge);
        this.gaps = new GapWatch(cell);
        this.heat = new HeatWatch(procedure.heat(), findings);
        this.own = new OwnWarmth(cell);
    }

    /**
     * Reads one scan.
     *
     * @param stepMillis watched since the one before
     * @param bonded whether the leads are bonded, so that the voltage says nothing about the cell
     * @param known whether the cell has been seen, so that another one would be noticed
     */
    Reading read(Scan scan, long stepMillis, Phase phase, boolean bonded, boolean known) {
        long at = scan.eventMillis();
        boolean announced = at < announcedUntilMillis;
        cell.look(scan);
        sensors.look(scan, !bonded, announced);
        boolean switched = load.follow(scan);
        if (switched) {
            switched(at);
            noise.interrupt();
        }
        double volts = sensors.volts();
        noise.add(volts, scan.resolutionVolts());
        if (load.isOn()) {
            take(scan, stepMillis);
        }
        double difference = noise.expandedDifference(scan.resolutionVolts());
        var now = new Reading(scan, stepMillis, volts, difference, switched, announced);
        load.judge(at, volts, sensors.amperes(), difference, stepMillis, announced);
        own.follow(now, amperes(volts), load);
        if (bonded) {
            hand.forget();
        } else if (!cell.switched() && !scan.loadApplied()) {
            hand.follow(now, sensors.amperes(), load.isOn(), load.hasDrawn());
        }
        sensorFault();
        heat.judge(scan, sensors, phase, announced, own, stepMillis);
        suspicion = Suspicion.NONE;
        weighingReversal = false;
        if (now.isKnown() && !bonded) {
            electrical(now, phase, known);
        }
        if (!now.isKnown() && sensors.isFaulty()) {
            drain.begin();
        }
        string(now);
        return now;
    }

    /** Through the load: measured, or worked out while it is on; NaN where neither can be. */
    private double amperes(double volts) {
        double measured = sensors.amperes();
        return Double.isNaN(measured) && load.isOn() ? cell.amperesAt(volts) : measured;
    }

    private void take(Scan scan, long stepMillis) {
        double volts = sensors.volts();
        double amperes = amperes(volts);
        if (Double.isNaN(amperes)) {
            charge.interrupt();
        } else {
            boolean measured = !Double.isNaN(sensors.amperes());
            charge.onLoad(volts, scan.expandedVolts(), amperes, measured, stepMillis / 1000.0);
        }
    }

    private void switched(long at) {
        steadySinceMillis = at;
        drain.begin();
        charge.interrupt();
        sensors.forgetFalls();
        if (!load.isOn()) {
            heat.cooling(at, sensors.excess());
        }
    }

    private void electrical(Reading now, Phase phase, boolean known) {
        long at = now.atMillis();
        boolean below = now.isSurelyBelow(REVERSED_VOLTS) && !findings.stands(FindingKind.LEAD_OPEN);
        boolean confirmed = reversed.holds(below, at);
        weighingReversal = below && !confirmed;
        if (confirmed) {
            findings.raise(
                    FindingKind.REVERSED,
                    now.volts(),
                    REVERSED_VOLTS,
                    "V",
                    "Reversed: %1$.3f V. Never charge this cell again.");
        }
        if (load.isOn()) {
            double limit = procedure.drain().limitVolts();
            drain.judge(now, phase, at - load.switchedMillis(), limit);
        }
        if (known) {
            suspicion = gaps.follow(
                    now.volts(),
                    now.expandedVolts(),
                    load.isOn(),
                    now.stepMillis(),
                    at - steadySinceMillis,
                    at - load.switchedMillis());
        }
        if (suspicion == Suspicion.CUT_OFF) {
            drain.cutOff(now.volts(), 0);
        }
    }

    private void sensorFault() {
        if (!sensors.isFaulty()) {
            findings.clear(FindingKind.SENSOR_FAULT);
            return;
        }
        findings.raise(
                FindingKind.SENSOR_FAULT,
                sensors.complaintReading(),
                Double.NaN,
                "",
                "Blind: %3$s.",
                sensors.complaint());
    }

    /** A string must open before one of its cells is reversed, and when one must come off or cannot be seen. */
    private void string(Reading now) {
        if (!cell.isInString() || !load.isOn()) {
            return;
        }
        boolean low = now.isKnown() && !now.isSurelyAbove(STRING_VOLTS);
        boolean unseen = !now.isKnown() && sensors.isFaulty();
        boolean due = now.atMillis() - stringAskedMillis >= STRING_RETRY_MILLIS;
        if (due && (low || unseen || findings.anyOpensTheLoad())) {
            stringAskedMillis = now.atMillis();
            findings.wish(Wish.OPEN_STRING);
        }
    }

    /** The cell and what it is drained by. */
    LoadedCell cell() {
        return cell;
    }

    /** Readings are missing. */
    void gap(long mostMillis) {
        gaps.gap(mostMillis, load.isOn());
    }

    /** Nothing before explains what comes next. */
    void interrupted(long at) {
        load.interrupted();
        hand.forget();
        reversed.forget();
        charge.interrupt();
        drain.begin();
        heat.interrupted();
        own.interrupted();
        sensors.forgetFalls();
        steadySinceMillis = at;
    }

    void announced(long untilMillis) {
        announcedUntilMillis = untilMillis;
        sensors.trustAgain();
        heat.forget();
    }

    /** A person dealt with what locked the cell. */
    void trustAgain() {
        sensors.trustAgain();
        gaps.forget();
        drain.decided();
    }

    void judgeBy(Procedure other) {
        procedure = other;
        sensors.judgeBy(other.plausible());
        heat.judgeBy(other.heat());
    }

    /** Whether the cell reads reversed, but in too few readings yet. */
    boolean isWeighingReversal() {
        return weighingReversal;
    }

    /** What the last scan suggests after a gap. */
    Suspicion suspicion() {
        return suspicion;
    }

    SensorWatch sensors() {
        return sensors;
    }

    LoadWatch load() {
        return load;
    }

    HandStep hand() {
        return hand;
    }

    ChargeMeter charge() {
        return charge;
    }

    DrainWatch drain() {
        return drain;
    }

    GapWatch gaps() {
        return gaps;
    }

    OwnWarmth own() {
        return own;
    }

    HeatWatch heat() {
        return heat;
    }
}
