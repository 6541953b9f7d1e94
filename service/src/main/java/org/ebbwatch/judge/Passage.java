package org.ebbwatch.judge;

import java.util.Locale;
import java.util.Set;
import org.ebbwatch.judge.Entry.LeadProof;
import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.FindingKind.LoadRule;
import org.ebbwatch.judge.GapWatch.Suspicion;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.estimate.ChargeMeter;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Procedure;

/**
 * The state of one passage and its phases, one method a phase, in the words of the procedure. {@link Judge} is its only
 * user and translates entries into calls. What is read from the channel is in {@link Channel}, what an open circuit tells
 * in {@link OpenCircuit}, what was watched for how long in {@link Watch}; every change of phase and of the load is here.
 */
final class Passage {
    private final CellCard card;
    private final FindingBook findings = new FindingBook();
    private final Channel channel;
    private final LoadWatch load;
    private final GapWatch gaps;
    private final OpenCircuit openCircuit;
    private final Watch watch;
    private final Pace pace = new Pace();
    private final PolarityProof polarity = new PolarityProof();
    private final Rounds rounds = new Rounds();

    private Procedure procedure;
    private Phase phase = Phase.CHECK_IN;
    private String reason = "checked in";
    private Reading last;
    private long lastMillis = Long.MIN_VALUE;
    private boolean wentOffWhileHeld;
    private boolean parted;

    Passage(CellCard card, Procedure procedure) {
        this.card = card;
        this.procedure = procedure;
        this.channel = new Channel(card, procedure, findings);
        this.load = channel.load();
        this.gaps = channel.gaps();
        this.openCircuit = new OpenCircuit(findings, load, procedure);
        this.watch = new Watch(findings, channel.sensors());
    }

    void reach(long millis) {
        lastMillis = millis;
        findings.at(millis, phase);
    }

    // ---- readings ----

    void scan(Scan scan) {
        long at = scan.eventMillis();
        reach(at);
        long missing = pace.since(at);
        if (missing > longestStepMillis()) {
            gap(missing, missing);
        }
        findings.clear(FindingKind.SILENT);
        boolean wasCutOff = findings.stands(FindingKind.CUT_OFF);
        Reading now = channel.read(scan, pace.heard(at), phase, isBonded(), isComparable());
        last = now;
        if (now.switched()) {
            switched(at);
        }
        if (channel.suspicion() == Suspicion.SWAPPED) {
            suspectSwap(now);
        }
        if (!wasCutOff && findings.stands(FindingKind.CUT_OFF)) {
            polarity.revoke();
        }
        locks();
        switch (phase) {
            case CHECK_IN -> checkIn(now);
            case DRAIN -> drain(now);
            case REST -> rest(now);
            case TIE_OFF -> tieOff(now);
            case HELD -> held(now);
            default -> throw new IllegalStateException("a reading in " + phase);
        }
        load.persist(at, !gaps.isOwed());
    }

    private long longestStepMillis() {
        return pace.longestMillis(procedure.plausible().silentMillis());
    }

    /** Whether another cell on the channel would be noticed: this one was seen, and its lead is not off. */
    private boolean isComparable() {
        boolean seen = phase != Phase.CHECK_IN || polarity.isProven();
        return seen && !findings.stands(FindingKind.LEAD_OPEN);
    }

    private void switched(long at) {
        if (load.isOn()) {
            findings.clear(FindingKind.REBOUND);
        } else {
            openCircuit.loadOff(at);
            wentOffWhileHeld = phase == Phase.HELD;
        }
    }

    private void suspectSwap(Reading now) {
        polarity.revoke();
        hold(String.format(
                Locale.ROOT, "another cell? %.3f V before a gap, %.3f V after it", gaps.before(), now.volts()));
    }

    /** What the findings that stand do to the load and the phase. */
    private void locks() {
        for (Finding finding : findings.standing()) {
            if (finding.kind().holds()) {
                hold(finding.line());
                if (finding.kind().loadRule() == LoadRule.OPEN) {
                    openLoad();
                }
            }
        }
        if (phase == Phase.HELD && !load.isOn()) {
            openLoad();
        }
    }

    private void openLoad() {
        if (load.wanted()) {
            load.want(false, lastMillis, true);
        }
    }

    // ---- the phases ----

    private void checkIn(Reading now) {
        prove(now);
        if (polarity.isProven()) {
            watch.ask(Wish.ASK_PUT_ON);
        }
    }

    private void prove(Reading now) {
        polarity.follow(now.atMillis(), now.isSurelyAbove(procedure.drain().provenVolts()));
    }

    private void drain(Reading now) {
        long longest = procedure.drain().longestMillis();
        if (rounds.drainingMillis(now.atMillis()) > longest) {
            hold("drained for " + longest / 86_400_000 + " days and still not empty");
            return;
        }
        if (!load.isOn()) {
            return;
        }
        if (now.isKnown() && !now.isBelow(procedure.drain().limitVolts())) {
            holdAgain();
            return;
        }
        watch.count(now, now.volts(), phase);
        if (!watch.hasLasted(holdMillis(), 0)) {
            return;
        }
        rounds.holdDone();
        if (card.switched()) {
            enterRest("held below the drain limit for " + holdMillis() / 3_600_000 + " h");
        } else {
            watch.ask(Wish.ASK_TAKE_OFF);
        }
    }

    private void holdAgain() {
        rounds.holdBroken();
        watch.restart();
        watch.takeBack(Wish.ASK_TAKE_OFF);
    }

    private void rest(Reading now) {
        if (load.isOn() || !isUndisturbed(now)) {
            return;
        }
        boolean over = watchOpen(now, Wish.ASK_TIE_OFF, procedure.rest().leastMillis(), 0);
        if (openCircuit.isStuck(now)) {
            locks();
        } else if (over && !rounds.isHoldDone()) {
            drainAgain("taken off before its hold was complete");
        } else if (!gaps.isOwed()) {
            openCircuit.willComeBack(now).ifPresent(to -> cameBack(to.limitAfterMillis()));
        }
    }

    private void tieOff(Reading now) {
        if (parted) {
            parted(now);
            return;
        }
        tieLoose(now);
        if (findings.stands(FindingKind.TIE_LOOSE)) {
            return;
        }
        watch.count(now, channel.sensors().excess(), phase);
        if (watch.hasLasted(procedure.tieOff().watchMillis(), procedure.tieOff().unbrokenMillis())) {
            watch.ask(Wish.ASK_PART);
        }
    }

    private void tieLoose(Reading now) {
        double loose = procedure.tieOff().looseVolts();
        if (now.isSurelyAbove(loose)) {
            findings.raise(FindingKind.TIE_LOOSE, now.volts(), loose, "V", "The bond is loose: %1$.3f V across it.");
        } else if (now.isKnown()) {
            findings.clear(FindingKind.TIE_LOOSE);
        }
    }

    /** The bond is parted: the last measurement before release. */
    private void parted(Reading now) {
        if (load.isOn() || !isUndisturbed(now)) {
            return;
        }
        long openMillis = procedure.tieOff().openMillis();
        watchOpen(now, Wish.ASK_RELEASE, openMillis, procedure.tieOff().unbrokenMillis());
        if (watch.hasLasted(openMillis, 0) && openCircuit.showsNoCell()) {
            locks();
        }
    }

    /** Whether the cell neither lost its lead nor came back; acts on it if it did. */
    private boolean isUndisturbed(Reading now) {
        if (openCircuit.leadCameOff(now)) {
            locks();
            return false;
        }
        if (!gaps.isOwed() && openCircuit.cameBack(now)) {
            cameBack(openCircuit.forMillis(now.atMillis()));
            return false;
        }
        return true;
    }

    /** Watches the open circuit; asks for the verdict once it is whole and proven. Says whether it is whole. */
    private boolean watchOpen(Reading now, Wish verdict, long wholeMillis, long unbrokenMillis) {
        watch.count(now, now.volts(), phase);
        boolean over = watch.hasLasted(wholeMillis, unbrokenMillis);
        boolean ready = over && rounds.isHoldDone() && openCircuit.isProven(now.atMillis(), watch.isAsked(verdict));
        if (ready) {
            watch.ask(verdict);
        } else {
            watch.takeBack(verdict);
        }
        openCircuit.askForProof(now.atMillis(), over && !ready, watch);
        return over;
    }

    private void held(Reading now) {
        prove(now);
        if (load.isOn() || !now.isKnown()) {
            return;
        }
        if (!gaps.isOwed()) {
            openCircuit.cameBack(now);
        }
        boolean explained = findings.stands(FindingKind.LEAD_OPEN) || findings.stands(FindingKind.CUT_OFF);
        if (wentOffWhileHeld && !explained && load.recoveryShouldShow(now.differenceVolts())) {
            openCircuit.follow(now);
            openCircuit.isStuck(now);
        }
    }

    private void cameBack(long afterMillis) {
        if (rounds.reboundTookNoLonger(afterMillis)) {
            hold("two longer holds brought no lower rest");
            return;
        }
        rounds.cameBack();
        drainAgain(findings.line(FindingKind.REBOUND));
    }

    // ---- what others report ----

    void silent() {
        findings.raise(FindingKind.SILENT, "Nothing heard from the board.");
        pace.silent();
        channel.charge().interrupt();
        watch.breakOff();
    }

    void gap(long leastMillis, long mostMillis) {
        if (mostMillis > longestStepMillis()) {
            findings.raise(
                    FindingKind.SILENT,
                    leastMillis / 1000.0,
                    procedure.plausible().silentMillis() / 1000.0,
                    "s",
                    "Nothing heard from the board for at least %3$d s.",
                    leastMillis / 1000);
        }
        if (mostMillis > procedure.plausible().pauseMillis()) {
            watch.restart();
        }
        channel.gap(mostMillis);
        interrupted();
        pace.missed(lastMillis);
    }

    /** Nothing before explains what comes next. */
    void interrupted() {
        last = null;
        watch.breakOff();
        channel.interrupted(lastMillis);
        polarity.interrupt();
    }

    void moved() {
        interrupted();
        gaps.forget();
        openCircuit.moved();
    }

    void recalibrated() {
        interrupted();
        gaps.forget();
        openCircuit.recalibrated();
    }

    void clock(boolean odd) {
        if (odd) {
            findings.raise(FindingKind.CLOCK_ODD, "The board's clock runs more than 1 % off: watch clocks stand.");
            watch.breakOff();
        } else {
            findings.clear(FindingKind.CLOCK_ODD);
        }
    }

    void leadChecked(LeadProof answer) {
        openCircuit.leadChecked(answer, lastMillis, phase != Phase.CHECK_IN && !isBonded());
        locks();
    }

    void metered(double volts) {
        if (!load.isOn() && (phase == Phase.REST || parted)) {
            openCircuit.metered(volts, lastMillis);
            locks();
        }
    }

    void announced(long untilMillis) {
        channel.announced(untilMillis);
    }

    void stringOpened() {
        channel.leaveString();
        load.want(false, lastMillis, true);
        hold("the string's load was opened; finish its cells singly");
    }

    void judgeBy(Procedure other) {
        boolean stricterRest = other.rest().limitVolts() < procedure.rest().limitVolts()
                || other.rest().leastMillis() > procedure.rest().leastMillis();
        boolean stricterHold = other.drain().limitVolts() < procedure.drain().limitVolts()
                || other.drain().holdMillis() > procedure.drain().holdMillis();
        procedure = other;
        channel.judgeBy(other);
        openCircuit.judgeBy(other);
        watch.takeBackVerdicts();
        if (stricterHold && phase == Phase.DRAIN) {
            holdAgain();
        } else if (stricterHold) {
            rounds.holdBroken();
        }
        if (phase == Phase.TIE_OFF && (stricterRest || stricterHold)) {
            hold("the procedure now wants more than this cell had before it was tied off");
        }
    }

    // ---- what a person did ----

    void act(Act act) {
        switch (act) {
            case PUT_ON -> putOn();
            case TAKE_OFF -> takeOff();
            case TIE_OFF -> {
                gaps.forget();
                channel.heat().bonded(true);
                enter(Phase.TIE_OFF, "leads bonded without a spark");
            }
            case SPARK -> {
                gaps.forget();
                rounds.cameBack();
                drainAgain("sparked when bonded");
            }
            case PART -> {
                unbond();
                parted = true;
                openCircuit.parted(lastMillis);
                watch.next();
            }
            case RELEASE -> enter(Phase.RELEASED, "parted, open, attached and below the rested limit");
            case WITHDRAW -> {
                load.want(false, lastMillis, true);
                enter(Phase.WITHDRAWN, "withdrawn by a person");
            }
            case DRAIN_AGAIN -> {
                findings.clearLatched();
                channel.trustAgain();
                rounds.decided(lastMillis);
                drainAgain("a person decided to drain again");
            }
        }
    }

    private void putOn() {
        boolean byHand = !card.switched();
        if (phase == Phase.DRAIN) {
            load.byHand(byHand);
            watch.takeBack(Wish.ASK_PUT_ON);
        } else if (polarity.isProven()) {
            load.byHand(byHand);
            drainAgain("load put on");
        } else {
            hold("not proven: never seen above 1 V with the right polarity");
        }
    }

    private void takeOff() {
        load.byHand(false);
        if (phase == Phase.DRAIN) {
            enterRest(rounds.isHoldDone() ? "taken off after its hold" : "taken off early");
        } else {
            openLoad();
        }
    }

    // ---- transitions ----

    private void drainAgain(String why) {
        unbond();
        rounds.begin(lastMillis);
        enter(Phase.DRAIN, why);
        load.want(!findings.anyLatched(), lastMillis, !gaps.isOwed());
        if (!card.switched() && !load.isHandOn()) {
            watch.ask(Wish.ASK_PUT_ON);
        }
    }

    private void unbond() {
        parted = false;
        channel.heat().bonded(false);
        findings.clear(FindingKind.TIE_LOOSE);
    }

    private void enterRest(String why) {
        enter(Phase.REST, why);
        load.want(false, lastMillis, true);
    }

    /** Stops here until a person decides. Only in DRAIN does the load stay as it is, unless a finding opens it. */
    private void hold(String why) {
        if (phase == Phase.HELD) {
            return;
        }
        boolean keep = phase == Phase.DRAIN && load.isOn();
        wentOffWhileHeld = false;
        enter(Phase.HELD, why);
        if (!keep) {
            load.want(false, lastMillis, true);
        }
    }

    private void enter(Phase next, String why) {
        Phase from = phase;
        phase = next;
        reason = why;
        watch.begin();
        findings.changed(from, next, why);
    }

    // ---- what others may ask ----

    private boolean isBonded() {
        return phase == Phase.TIE_OFF && !parted;
    }

    private long holdMillis() {
        return rounds.holdMillis(procedure.drain().holdMillis());
    }

    /** Whether the cell is seen at this moment, undisturbed and below the rested limit. */
    private boolean isSeenEmpty() {
        boolean below = last != null && last.isBelow(procedure.rest().limitVolts());
        return below && watch.isSeen() && !gaps.isOwed();
    }

    boolean isRested() {
        return phase == Phase.REST && watch.isAsked(Wish.ASK_TIE_OFF) && isSeenEmpty();
    }

    boolean isWatched() {
        return isBonded() && watch.isAsked(Wish.ASK_PART);
    }

    boolean isReleasable() {
        return phase == Phase.TIE_OFF && parted && watch.isAsked(Wish.ASK_RELEASE) && isSeenEmpty();
    }

    boolean mayTakeOff() {
        return phase == Phase.DRAIN || (phase == Phase.HELD && load.canBeTakenOff());
    }

    boolean mayDrainAgain() {
        boolean reversed = findings.stands(FindingKind.REVERSED);
        boolean stillHot = findings.stands(FindingKind.HOT) && !channel.heat().isCalm();
        return phase == Phase.HELD && polarity.isProven() && !reversed && !stillHot;
    }

    boolean isLocked() {
        return phase == Phase.HELD || findings.anyLatched();
    }

    long remainingMillis() {
        Procedure.TieOff tieOff = procedure.tieOff();
        return switch (phase) {
            case DRAIN -> watch.remainingMillis(holdMillis(), 0);
            case REST -> watch.remainingMillis(procedure.rest().leastMillis(), 0);
            case TIE_OFF ->
                watch.remainingMillis(parted ? tieOff.openMillis() : tieOff.watchMillis(), tieOff.unbrokenMillis());
            default -> 0;
        };
    }

    Set<Wish> standingWishes() {
        return watch.asked();
    }

    FindingBook findings() {
        return findings;
    }

    LoadWatch load() {
        return load;
    }

    ChargeMeter charge() {
        return channel.charge();
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
