package org.ebbwatch.judge;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import org.ebbwatch.judge.Entry.LeadProof;
import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.estimate.ChargeMeter;
import org.ebbwatch.judge.estimate.NoiseMeter;
import org.ebbwatch.judge.estimate.WatchClock;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Procedure;

/**
 * The state of one passage and its phases, one method a phase, in the words of the procedure. {@link Judge} is its only
 * user and translates entries into calls.
 */
final class Passage {
    private static final double REVERSED_VOLTS = -0.02;
    private static final double STRING_VOLTS = 1.0;
    private static final Set<Wish> VERDICTS =
            Set.copyOf(EnumSet.of(Wish.ASK_TIE_OFF, Wish.ASK_PART, Wish.ASK_RELEASE, Wish.ASK_METER));

    private final CellCard card;
    private final FindingBook findings = new FindingBook();
    private final SensorWatch sensors;
    private final NoiseMeter noise = new NoiseMeter();
    private final ChargeMeter charge;
    private final LoadWatch load;
    private final DrainWatch drain;
    private final OpenCircuitProof proof = new OpenCircuitProof(findings);
    private final GapWatch gaps;
    private final WatchClock clock = new WatchClock();
    private final PolarityProof polarity = new PolarityProof();
    private final Rounds rounds = new Rounds();

    private Procedure procedure;
    private HeatWatch heat;
    private Phase phase = Phase.CHECK_IN;
    private String reason = "checked in";
    private final Set<Wish> standing = EnumSet.noneOf(Wish.class);

    private long lastMillis = Long.MIN_VALUE;
    private long lastScanMillis = Long.MIN_VALUE;
    private long steadySinceMillis;
    private long announcedUntilMillis = Long.MIN_VALUE;
    private boolean parted;
    private boolean releasable;
    private boolean clockOdd;
    private long offSinceMillis;

    Passage(CellCard card, Procedure procedure) {
        this.card = card;
        this.procedure = procedure;
        this.sensors = new SensorWatch(procedure.plausible());
        this.charge = new ChargeMeter(card.loadOhms());
        this.load = new LoadWatch(card, findings);
        this.drain = new DrainWatch(card, findings, charge);
        this.gaps = new GapWatch(card);
        this.heat = new HeatWatch(procedure.heat(), findings);
    }

    void reach(long millis) {
        lastMillis = millis;
        findings.at(millis, phase);
    }

    // ---- readings ----

    void scan(Scan scan) {
        long at = scan.eventMillis();
        long step = lastScanMillis == Long.MIN_VALUE ? 0 : at - lastScanMillis;
        if (step > procedure.plausible().pauseMillis()) {
            gap(at, step, step);
            step = 0;
        }
        reach(at);
        lastScanMillis = at;
        findings.clear(FindingKind.SILENT);
        sensors.look(scan, !isBonded(), isAnnounced(at));
        if (load.follow(scan)) {
            switched(scan);
        }
        double volts = sensors.volts();
        noise.add(volts, scan.resolutionVolts());
        if (load.isOn()) {
            charge.onLoad(volts, sensors.amperes(), step / 1000.0);
        }
        double difference = noise.expandedDifference(scan.resolutionVolts());
        load.judge(scan, volts, sensors.amperes(), difference);
        sensorFault();
        if (heat.judge(scan, sensors, phase, isAnnounced(at), step)) {
            hold(at, findingLine(FindingKind.HOT));
        }
        if (!Double.isNaN(volts)) {
            electrical(scan, volts, step);
        }
        locks(at);
        switch (phase) {
            case CHECK_IN -> checkIn(scan, volts);
            case DRAIN -> drain(scan, volts, step);
            case REST -> rest(scan, volts, difference, step);
            case TIE_OFF -> tieOff(scan, volts, difference, step);
            case HELD -> {
                prove(scan, volts);
                rebound(scan, volts);
            }
            default -> throw new IllegalStateException("a reading in " + phase);
        }
    }

    private void switched(Scan scan) {
        long at = scan.eventMillis();
        steadySinceMillis = at;
        drain.begin();
        charge.interrupt();
        sensors.forgetFalls();
        if (load.isOn()) {
            findings.clear(FindingKind.REBOUND);
        } else {
            offSinceMillis = at;
            proof.begin(load.beforeVolts());
            heat.cooling(at, sensors.excess());
        }
    }

    private void electrical(Scan scan, double volts, long step) {
        long at = scan.eventMillis();
        if (findings.stands(FindingKind.LEAD_OPEN)) {
            return;
        }
        if (volts + scan.expandedVolts() < REVERSED_VOLTS && phase != Phase.TIE_OFF) {
            findings.raise(
                    FindingKind.REVERSED,
                    volts,
                    REVERSED_VOLTS,
                    "V",
                    "Reversed: %1$.3f V. Never charge this cell again.");
        }
        if (card.inString() && load.isOn() && phase == Phase.DRAIN && volts - scan.expandedVolts() < STRING_VOLTS) {
            ask(Wish.OPEN_STRING);
        }
        if (load.isOn()) {
            drain.judge(
                    scan,
                    phase,
                    volts,
                    at - load.switchedMillis(),
                    step,
                    procedure.drain().limitVolts());
        }
        if (phase == Phase.TIE_OFF) {
            return;
        }
        switch (gaps.follow(volts, load.isOn(), at - steadySinceMillis, scan.expandedVolts())) {
            case NONE -> {}
            case CUT_OFF -> drain.cutOff(volts, 0);
            case SWAPPED ->
                hold(
                        at,
                        String.format(
                                Locale.ROOT,
                                "another cell? %.3f V before a gap, %.3f V after it",
                                gaps.before(),
                                volts));
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

    /** What the findings that stand do to the load and the phase. */
    private void locks(long at) {
        for (Finding finding : findings.standing()) {
            FindingKind kind = finding.kind();
            if (kind.isLatched() || kind == FindingKind.LOAD_LOST || kind == FindingKind.LOAD_STUCK) {
                hold(at, finding.line());
                if (kind.loadRule() == FindingKind.LoadRule.OPEN && load.wanted()) {
                    load.want(false, at);
                }
            }
        }
    }

    // ---- the phases ----

    private void prove(Scan scan, double volts) {
        polarity.follow(
                scan.eventMillis(),
                volts - scan.expandedVolts() > procedure.drain().provenVolts());
    }

    private void checkIn(Scan scan, double volts) {
        prove(scan, volts);
        if (polarity.isProven()) {
            ask(Wish.ASK_PUT_ON);
        }
    }

    private void drain(Scan scan, double volts, long step) {
        if (rounds.drainingMillis(scan.eventMillis()) > procedure.drain().longestMillis()) {
            hold(
                    scan.eventMillis(),
                    "drained for " + procedure.drain().longestMillis() / 86_400_000 + " days and still not empty");
            return;
        }
        if (!load.isOn() || Double.isNaN(volts) || clockOdd) {
            clock.pause();
            return;
        }
        if (volts + scan.expandedVolts() >= procedure.drain().limitVolts()) {
            clock.restart();
            rounds.holdBroken();
            standing.remove(Wish.ASK_TAKE_OFF);
            return;
        }
        clock.run(step);
        if (clock.elapsedMillis() < holdMillis()) {
            return;
        }
        rounds.holdDone();
        if (card.switched()) {
            enterRest("held below the drain limit for " + holdMillis() / 3_600_000 + " h");
        } else {
            ask(Wish.ASK_TAKE_OFF);
        }
    }

    private void rest(Scan scan, double volts, double difference, long step) {
        long at = scan.eventMillis();
        if (load.isOn()) {
            clock.pause();
            return;
        }
        boolean over =
                openCircuit(scan, volts, difference, step, procedure.rest().leastMillis());
        if (phase != Phase.REST || isRested()) {
            return;
        }
        if (!proof.hasRecovered() && at - offSinceMillis > procedure.rest().recoveryMillis()) {
            findings.raise(
                    FindingKind.LOAD_STUCK,
                    proof.recoveredVolts(),
                    LoadWatch.STEP_FACTOR * difference,
                    "V",
                    "Load off, but no recovery (%1$.4f V in %3$d s): load stuck, or no cell there.",
                    (at - offSinceMillis) / 1000);
            locks(at);
        } else if (over && !rounds.isHoldDone()) {
            drainAgain(at, "taken off before its hold was complete");
        } else if (over && proof.isComplete(at)) {
            standing.remove(Wish.ASK_METER);
            ask(Wish.ASK_TIE_OFF);
        }
    }

    /** One reading with nothing across the cell; says whether it has been watched for {@code wholeMillis}. */
    private boolean openCircuit(Scan scan, double volts, double difference, long step, long wholeMillis) {
        long at = scan.eventMillis();
        if (rebound(scan, volts)) {
            return false;
        }
        if (isAnnounced(at)) {
            clock.pause();
            return false;
        }
        proof.follow(volts, scan.expandedVolts(), difference, step);
        if (leadCameOff(scan)) {
            return false;
        }
        if (isBlind(volts)) {
            clock.pause();
            return false;
        }
        clock.run(step);
        boolean over = clock.elapsedMillis() >= wholeMillis;
        boolean undecided = !standing.contains(Wish.ASK_TIE_OFF) && !standing.contains(Wish.ASK_RELEASE);
        proof.askWhenDue(at, over && undecided);
        if (over && undecided && proof.needsMeter(at)) {
            ask(Wish.ASK_METER);
        }
        return over;
    }

    private void tieOff(Scan scan, double volts, double difference, long step) {
        if (parted) {
            open(scan, volts, difference, step);
            return;
        }
        if (volts - scan.expandedVolts() > procedure.tieOff().looseVolts()) {
            findings.raise(
                    FindingKind.TIE_LOOSE,
                    volts,
                    procedure.tieOff().looseVolts(),
                    "V",
                    "The bond is loose: %1$.3f V across it.");
        } else if (!Double.isNaN(volts)) {
            findings.clear(FindingKind.TIE_LOOSE);
        }
        if (isBlind(sensors.excess()) || findings.stands(FindingKind.TIE_LOOSE)) {
            clock.pause();
        } else if (findings.stands(FindingKind.WARMING)) {
            clock.restart();
        } else {
            clock.run(step);
        }
        if (isWatched()) {
            ask(Wish.ASK_PART);
        }
    }

    /** The bond is parted: the last measurement before release. */
    private void open(Scan scan, double volts, double difference, long step) {
        long at = scan.eventMillis();
        boolean over =
                openCircuit(scan, volts, difference, step, procedure.tieOff().openMillis());
        if (phase != Phase.TIE_OFF || !over || releasable) {
            return;
        }
        if (!proof.hasRecovered()) {
            if (clock.elapsedMillis() < procedure.tieOff().longestOpenMillis()) {
                return;
            }
            findings.raise(
                    FindingKind.LEAD_OPEN,
                    proof.recoveredVolts(),
                    LoadWatch.STEP_FACTOR * difference,
                    "V",
                    "Parted for %3$d min, no recovery: nothing shows a cell.",
                    clock.elapsedMillis() / 60_000);
            locks(at);
        } else if (proof.isComplete(at)) {
            releasable = true;
            standing.remove(Wish.ASK_METER);
            ask(Wish.ASK_RELEASE);
        }
    }

    /** REBOUND: whenever the load is off after it was on and V + U is above the rested limit. */
    private boolean rebound(Scan scan, double volts) {
        if (!rounds.isBegun()
                || load.isOn()
                || gaps.isPending()
                || findings.stands(FindingKind.LEAD_OPEN)
                || !(volts + scan.expandedVolts() > procedure.rest().limitVolts())) {
            return false;
        }
        long at = scan.eventMillis();
        if (phase != Phase.HELD && proof.isToBeConfirmed(at, at - offSinceMillis)) {
            return true;
        }
        boolean fresh = findings.raise(
                FindingKind.REBOUND,
                volts,
                procedure.rest().limitVolts(),
                "V",
                "Came back to %1$.3f V with the load off, limit %2$.2f V: not empty.");
        if (!fresh || phase == Phase.HELD) {
            return fresh;
        }
        if (rounds.reboundTookNoLonger(at - offSinceMillis)) {
            hold(at, "two longer holds brought no lower rest");
        } else {
            drainAgain(at, findingLine(FindingKind.REBOUND));
        }
        return true;
    }

    private boolean leadCameOff(Scan scan) {
        double drop = proof.impossibleDrop();
        if (drop == 0) {
            return false;
        }
        findings.raise(
                FindingKind.LEAD_OPEN,
                drop,
                0.0,
                "V",
                "Fell by %1$.3f V with the load off: a resting cell cannot, a lead came off.");
        locks(scan.eventMillis());
        return true;
    }

    // ---- what others report ----

    void silent(long at) {
        findings.raise(FindingKind.SILENT, "Nothing heard from the board.");
        clock.pause();
        charge.interrupt();
    }

    void gap(long at, long leastMillis, long mostMillis) {
        if (leastMillis >= procedure.plausible().silentMillis()) {
            findings.raise(
                    FindingKind.SILENT,
                    leastMillis / 1000.0,
                    procedure.plausible().silentMillis() / 1000.0,
                    "s",
                    "Nothing heard from the board for %3$d s.",
                    leastMillis / 1000);
        }
        if (mostMillis > procedure.plausible().pauseMillis()) {
            clock.restart();
            releasable = false;
            standing.removeAll(VERDICTS);
        }
        gaps.gap(mostMillis, load.isOn());
        interrupted();
        lastScanMillis = at;
    }

    /** Nothing before explains what comes next. */
    void interrupted() {
        clock.pause();
        charge.interrupt();
        drain.begin();
        heat.forget();
        sensors.forgetFalls();
        steadySinceMillis = lastMillis;
        polarity.interrupt();
    }

    void forgetLevels() {
        gaps.forget();
        proof.levelAnew();
    }

    void clock(long at, boolean odd) {
        clockOdd = odd;
        if (odd) {
            findings.raise(FindingKind.CLOCK_ODD, "The board's clock runs more than 1 % off: watch clocks stand.");
            clock.pause();
        } else {
            findings.clear(FindingKind.CLOCK_ODD);
        }
    }

    void leadChecked(long at, LeadProof answer) {
        proof.checked(answer, at);
        if (answer == LeadProof.OPEN && phase != Phase.CHECK_IN && !(phase == Phase.TIE_OFF && !parted)) {
            findings.raise(FindingKind.LEAD_OPEN, "The lead check moved the channel: no cell is attached.");
            locks(at);
        }
    }

    void metered(long at, double volts) {
        proof.metered(volts, at);
    }

    void announced(long untilMillis) {
        announcedUntilMillis = untilMillis;
        sensors.trustAgain();
        heat.forget();
    }

    void judgeBy(Procedure other) {
        procedure = other;
        sensors.judgeBy(other.plausible());
        heat = new HeatWatch(other.heat(), findings);
        heat.bonded(phase == Phase.TIE_OFF && !parted);
    }

    // ---- what a person did ----

    void act(long at, Act act) {
        switch (act) {
            case PUT_ON -> putOn(at);
            case TAKE_OFF -> takeOff();
            case TIE_OFF -> {
                gaps.forget();
                heat.bonded(true);
                enter(Phase.TIE_OFF, "leads bonded without a spark");
            }
            case SPARK -> drainAgain(at, "sparked when bonded");
            case PART -> {
                parted = true;
                releasable = false;
                clock.restart();
                offSinceMillis = at;
                proof.begin(Double.NaN);
                heat.bonded(false);
                standing.clear();
            }
            case RELEASE -> enter(Phase.RELEASED, "parted, open, attached and below the rested limit");
            case WITHDRAW -> {
                load.want(false, at);
                enter(Phase.WITHDRAWN, "withdrawn by a person");
            }
            case DRAIN_AGAIN -> {
                findings.clearLatched();
                sensors.trustAgain();
                gaps.forget();
                drainAgain(at, "a person decided to drain again");
            }
        }
    }

    private void putOn(long at) {
        if (phase == Phase.DRAIN) {
            load.byHand(true);
            return;
        }
        if (!polarity.isProven()) {
            hold(at, "not proven: never seen above 1 V with the right polarity");
            return;
        }
        drainAgain(at, "load put on");
        load.byHand(!card.switched());
    }

    private void takeOff() {
        load.byHand(false);
        if (phase == Phase.DRAIN) {
            enterRest(rounds.isHoldDone() ? "taken off after its hold" : "taken off early");
        }
    }

    // ---- transitions ----

    private void drainAgain(long at, String why) {
        parted = false;
        heat.bonded(false);
        rounds.begin(at);
        enter(Phase.DRAIN, why);
        load.want(!findings.anyLatched(), at);
        if (!card.switched()) {
            ask(Wish.ASK_PUT_ON);
        }
    }

    private void enterRest(String why) {
        enter(Phase.REST, why);
        load.want(false, lastMillis);
    }

    /** Stops here until a person decides. Only in DRAIN does the load stay as it is, unless a finding opens it. */
    void hold(long at, String why) {
        if (phase == Phase.HELD) {
            return;
        }
        boolean keep = phase == Phase.DRAIN;
        enter(Phase.HELD, why);
        if (!keep) {
            load.want(false, at);
        }
    }

    private void enter(Phase next, String why) {
        Phase from = phase;
        phase = next;
        reason = why;
        clock.restart();
        standing.clear();
        gaps.settle();
        findings.changed(from, next, why);
    }

    private void ask(Wish wish) {
        if (standing.add(wish)) {
            findings.wish(wish);
        }
    }

    private String findingLine(FindingKind kind) {
        for (Finding finding : findings.standing()) {
            if (finding.kind() == kind) {
                return finding.line();
            }
        }
        return kind.name();
    }

    // ---- what others may ask ----

    private boolean isAnnounced(long at) {
        return at < announcedUntilMillis;
    }

    private boolean isBlind(double needed) {
        return Double.isNaN(needed) || Double.isNaN(sensors.celsius()) || sensors.isFaulty() || clockOdd;
    }

    private long holdMillis() {
        return rounds.holdMillis(procedure.drain().holdMillis());
    }

    private boolean isBonded() {
        return phase == Phase.TIE_OFF && !parted;
    }

    boolean isRested() {
        return phase == Phase.REST && standing.contains(Wish.ASK_TIE_OFF);
    }

    boolean isWatched() {
        return phase == Phase.TIE_OFF
                && !parted
                && clock.elapsedMillis() >= procedure.tieOff().watchMillis()
                && clock.unbrokenMillis() >= procedure.tieOff().unbrokenMillis();
    }

    boolean isReleasable() {
        return releasable && phase == Phase.TIE_OFF && parted;
    }

    boolean mayDrainAgain() {
        boolean reversed = findings.stands(FindingKind.REVERSED);
        boolean stillHot = findings.stands(FindingKind.HOT) && !heat.isCalm();
        return polarity.isProven() && !reversed && !stillHot;
    }

    boolean isLocked() {
        return phase == Phase.HELD || findings.anyLatched();
    }

    long remainingMillis() {
        long whole =
                switch (phase) {
                    case DRAIN -> holdMillis();
                    case REST -> procedure.rest().leastMillis();
                    case TIE_OFF ->
                        parted
                                ? procedure.tieOff().openMillis()
                                : procedure.tieOff().watchMillis();
                    default -> 0;
                };
        return Math.max(0, whole - clock.elapsedMillis());
    }

    Set<Wish> standingWishes() {
        return Set.copyOf(standing);
    }

    FindingBook findings() {
        return findings;
    }

    LoadWatch load() {
        return load;
    }

    ChargeMeter charge() {
        return charge;
    }

    Phase phase() {
        return phase;
    }

    String reason() {
        return reason;
    }

    int round() {
        return rounds.count();
    }

    long lastMillis() {
        return lastMillis;
    }
}
