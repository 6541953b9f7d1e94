package org.ebbwatch.judge;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import org.ebbwatch.judge.Entry.LeadProof;
import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.FindingKind.LoadRule;
import org.ebbwatch.judge.GapWatch.Suspicion;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.estimate.ChargeMeter;
import org.ebbwatch.judge.estimate.RestForecast;
import org.ebbwatch.judge.estimate.WatchClock;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Procedure;

/**
 * The state of one passage and its phases, one method a phase, in the words of the procedure. {@link Judge} is its only
 * user and translates entries into calls.
 */
final class Passage {
    private static final Set<Wish> VERDICTS =
            Set.copyOf(EnumSet.of(Wish.ASK_TIE_OFF, Wish.ASK_PART, Wish.ASK_RELEASE, Wish.ASK_METER));
    private static final Set<Wish> NEED_AN_UNBROKEN_WATCH = Set.copyOf(EnumSet.of(Wish.ASK_PART, Wish.ASK_RELEASE));

    private final CellCard card;
    private final FindingBook findings = new FindingBook();
    private final Channel channel;
    private final LoadWatch load;
    private final SensorWatch sensors;
    private final GapWatch gaps;
    private final OpenCircuitProof proof = new OpenCircuitProof(findings);
    private final RestForecast forecast = new RestForecast();
    private final Pace pace = new Pace();
    private final WatchClock clock = new WatchClock();
    private final PolarityProof polarity = new PolarityProof();
    private final Rounds rounds = new Rounds();
    private final Set<Wish> standing = EnumSet.noneOf(Wish.class);

    private Procedure procedure;
    private Phase phase = Phase.CHECK_IN;
    private String reason = "checked in";
    private Reading last;
    private long lastMillis = Long.MIN_VALUE;
    private long offSinceMillis;
    private boolean wentOffWhileHeld;
    private boolean parted;
    private boolean clockOdd;

    Passage(CellCard card, Procedure procedure) {
        this.card = card;
        this.procedure = procedure;
        this.channel = new Channel(card, procedure, findings);
        this.load = channel.load();
        this.sensors = channel.sensors();
        this.gaps = channel.gaps();
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
        if (missing > pace.longestMillis(procedure.plausible().silentMillis())) {
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

    /** Whether another cell on the channel would be noticed: this one was seen, and its lead is not off. */
    private boolean isComparable() {
        boolean seen = phase != Phase.CHECK_IN || polarity.isProven();
        return seen && !findings.stands(FindingKind.LEAD_OPEN);
    }

    private void switched(long at) {
        if (load.isOn()) {
            findings.clear(FindingKind.REBOUND);
            return;
        }
        offSinceMillis = at;
        wentOffWhileHeld = phase == Phase.HELD;
        proof.begin(load.beforeVolts(), 0);
        forecast.begin(at);
    }

    private void suspectSwap(Reading now) {
        polarity.revoke();
        hold(String.format(
                Locale.ROOT, "another cell? %.3f V before a gap, %.3f V after it", gaps.before(), now.volts()));
    }

    /** What the findings that stand do to the load and the phase. */
    private void locks() {
        for (Finding finding : findings.standing()) {
            FindingKind kind = finding.kind();
            if (!kind.holds()) {
                continue;
            }
            hold(finding.line());
            if (kind.loadRule() == LoadRule.OPEN) {
                open();
            }
        }
        if (phase == Phase.HELD && !load.isOn()) {
            open();
        }
    }

    private void open() {
        if (load.wanted()) {
            load.want(false, lastMillis, true);
        }
    }

    // ---- the phases ----

    private void checkIn(Reading now) {
        prove(now);
        if (polarity.isProven()) {
            ask(Wish.ASK_PUT_ON);
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
        if (now.isKnown() && !isBelow(now, procedure.drain().limitVolts())) {
            clock.restart();
            rounds.holdBroken();
            standing.remove(Wish.ASK_TAKE_OFF);
            return;
        }
        watch(now, now.volts());
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

    private void rest(Reading now) {
        if (load.isOn()) {
            return;
        }
        boolean over = openCircuit(now, Wish.ASK_TIE_OFF, procedure.rest().leastMillis(), 0);
        if (phase != Phase.REST) {
            return;
        }
        if (loadSeemsStuck()) {
            loadStuck(now);
            locks();
        } else if (over && !rounds.isHoldDone()) {
            drainAgain("taken off before its hold was complete");
        } else {
            forecast(now);
        }
    }

    /** One reading with nothing across the cell; says whether it has been watched for long enough. */
    private boolean openCircuit(Reading now, Wish verdict, long wholeMillis, long unbrokenMillis) {
        long at = now.atMillis();
        if (now.isKnown()) {
            proof.follow(now);
            if (leadCameOff(now) || rebound(now)) {
                return false;
            }
        }
        watch(now, now.volts());
        boolean over = clock.elapsedMillis() >= wholeMillis && clock.unbrokenMillis() >= unbrokenMillis;
        boolean stands = standing.contains(verdict);
        boolean ready = over && rounds.isHoldDone() && (stands ? proof.stillHolds(at) : proof.isComplete(at));
        if (ready) {
            ask(verdict);
        } else {
            standing.remove(verdict);
        }
        proof.askWhenDue(at, over && !ready);
        if (over && proof.needsMeter(at)) {
            ask(Wish.ASK_METER);
        }
        return over;
    }

    private void tieOff(Reading now) {
        if (parted) {
            parted(now);
            return;
        }
        double loose = procedure.tieOff().looseVolts();
        if (now.isKnown() && now.isSurelyAbove(loose)) {
            findings.raise(FindingKind.TIE_LOOSE, now.volts(), loose, "V", "The bond is loose: %1$.3f V across it.");
        } else if (now.isKnown()) {
            findings.clear(FindingKind.TIE_LOOSE);
        }
        if (findings.stands(FindingKind.TIE_LOOSE)) {
            return;
        }
        watch(now, sensors.excess());
        boolean whole = clock.elapsedMillis() >= procedure.tieOff().watchMillis();
        if (whole && clock.unbrokenMillis() >= procedure.tieOff().unbrokenMillis()) {
            ask(Wish.ASK_PART);
        }
    }

    /** The bond is parted: the last measurement before release. */
    private void parted(Reading now) {
        if (load.isOn()) {
            return;
        }
        long openMillis = procedure.tieOff().openMillis();
        openCircuit(now, Wish.ASK_RELEASE, openMillis, procedure.tieOff().unbrokenMillis());
        if (phase == Phase.TIE_OFF && clock.elapsedMillis() >= openMillis && !proof.hasRecovered()) {
            findings.raise(
                    FindingKind.LEAD_OPEN,
                    proof.recoveredVolts(),
                    proof.neededVolts(),
                    "V",
                    "Parted for %3$d min, no recovery: nothing shows a cell.",
                    openMillis / 60_000);
            locks();
        }
    }

    private void held(Reading now) {
        prove(now);
        if (load.isOn() || !now.isKnown()) {
            return;
        }
        rebound(now);
        if (!wentOffWhileHeld || findings.stands(FindingKind.LEAD_OPEN) || findings.stands(FindingKind.CUT_OFF)) {
            return;
        }
        proof.follow(now);
        if (loadSeemsStuck() && load.recoveryShouldShow(now.differenceVolts())) {
            loadStuck(now);
        }
    }

    /** Counts watched time; blind or with an odd clock there is none, and a cell that warms starts again. */
    private void watch(Reading now, double needed) {
        if (sensors.isFaulty() || clockOdd) {
            breakWatch();
        } else if (findings.stands(FindingKind.WARMING) && phase != Phase.DRAIN) {
            clock.restart();
            standing.removeAll(VERDICTS);
        } else if (!Double.isNaN(needed) && !Double.isNaN(sensors.celsius())) {
            clock.run(now.stepMillis());
        }
    }

    private void breakWatch() {
        clock.pause();
        standing.removeAll(NEED_AN_UNBROKEN_WATCH);
    }

    // ---- findings that need the procedure ----

    /** REBOUND: whenever the load is off after it was on and V + U is above the rested limit. */
    private boolean rebound(Reading now) {
        double limit = procedure.rest().limitVolts();
        if (!load.hasBeenOn() || gaps.isOwed() || isBelow(now, limit)) {
            return false;
        }
        findings.raise(
                FindingKind.REBOUND,
                now.volts(),
                limit,
                "V",
                "Came back to %1$.3f V with the load off, limit %2$.2f V: not empty.");
        cameBack(now.atMillis() - offSinceMillis);
        return true;
    }

    private void forecast(Reading now) {
        double limit = procedure.rest().limitVolts();
        if (!forecast.add(now.atMillis(), proof.smoothVolts()) || gaps.isOwed()) {
            return;
        }
        forecast.forecast(
                        limit - now.expandedVolts(),
                        procedure.rest().leastMillis(),
                        2 * LoadWatch.STEP_FACTOR * now.differenceVolts())
                .filter(to -> to.volts() - now.expandedVolts() > limit)
                .ifPresent(to -> {
                    findings.raise(
                            FindingKind.REBOUND,
                            to.volts(),
                            limit,
                            "V",
                            "Now at %3$.3f V it will come back to %1$.3f V in its rest, limit %2$.2f V: not empty.",
                            now.volts());
                    cameBack(to.limitAfterMillis());
                });
    }

    private void cameBack(long afterMillis) {
        if (phase == Phase.HELD) {
            return;
        }
        if (rounds.reboundTookNoLonger(afterMillis)) {
            hold("two longer holds brought no lower rest");
            return;
        }
        rounds.cameBack();
        drainAgain(findings.line(FindingKind.REBOUND));
    }

    private boolean leadCameOff(Reading now) {
        double drop = proof.impossibleDrop();
        if (drop == 0) {
            return false;
        }
        if (!now.announced()) {
            findings.raise(
                    FindingKind.LEAD_OPEN,
                    drop,
                    0.0,
                    "V",
                    "Fell by %1$.3f V with the load off: a resting cell cannot, a lead came off.");
            locks();
        }
        return true;
    }

    private boolean loadSeemsStuck() {
        return !proof.hasRecovered() && proof.watchedMillis() > procedure.rest().recoveryMillis();
    }

    private void loadStuck(Reading now) {
        findings.raise(
                FindingKind.LOAD_STUCK,
                proof.recoveredVolts(),
                proof.neededVolts(),
                "V",
                "Load off, but no recovery (%1$.4f V in %3$d s): load stuck, or no cell there.",
                (now.atMillis() - offSinceMillis) / 1000);
    }

    // ---- what others report ----

    void silent() {
        findings.raise(FindingKind.SILENT, "Nothing heard from the board.");
        pace.silent();
        channel.charge().interrupt();
        breakWatch();
    }

    void gap(long leastMillis, long mostMillis) {
        if (mostMillis > pace.longestMillis(procedure.plausible().silentMillis())) {
            findings.raise(
                    FindingKind.SILENT,
                    leastMillis / 1000.0,
                    procedure.plausible().silentMillis() / 1000.0,
                    "s",
                    "Nothing heard from the board for at least %3$d s.",
                    leastMillis / 1000);
        }
        if (mostMillis > procedure.plausible().pauseMillis()) {
            clock.restart();
            standing.removeAll(VERDICTS);
        }
        channel.gap(mostMillis);
        interrupted();
        pace.missed(lastMillis);
    }

    /** Nothing before explains what comes next. */
    void interrupted() {
        last = null;
        breakWatch();
        channel.interrupted(lastMillis);
        polarity.interrupt();
    }

    void moved() {
        interrupted();
        gaps.forget();
        forecast.forget();
        proof.moved();
    }

    void recalibrated() {
        interrupted();
        gaps.forget();
        forecast.forget();
        proof.levelAnew();
    }

    void clock(boolean odd) {
        clockOdd = odd;
        if (odd) {
            findings.raise(FindingKind.CLOCK_ODD, "The board's clock runs more than 1 % off: watch clocks stand.");
            breakWatch();
        } else {
            findings.clear(FindingKind.CLOCK_ODD);
        }
    }

    void leadChecked(LeadProof answer) {
        proof.checked(answer, lastMillis);
        if (answer == LeadProof.OPEN && phase != Phase.CHECK_IN && !isBonded()) {
            findings.raise(FindingKind.LEAD_OPEN, "The lead check moved the channel: no cell is attached.");
            locks();
        }
    }

    void metered(double volts) {
        if (load.isOn() || (phase != Phase.REST && !parted)) {
            return;
        }
        if (proof.contradicts(volts)) {
            findings.raise(
                    FindingKind.LEAD_OPEN,
                    proof.smoothVolts(),
                    volts,
                    "V",
                    "A meter reads %2$.3f V where the board reads %1$.3f V: the board is not attached.");
            locks();
        } else {
            proof.metered(volts, lastMillis);
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
        standing.removeAll(VERDICTS);
        if (stricterHold) {
            rounds.holdBroken();
        }
        if (stricterHold && phase == Phase.DRAIN) {
            standing.remove(Wish.ASK_TAKE_OFF);
            clock.restart();
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
            case PART -> part();
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
            standing.remove(Wish.ASK_PUT_ON);
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
            open();
        }
    }

    private void part() {
        unbond();
        parted = true;
        clock.next();
        offSinceMillis = lastMillis;
        proof.begin(0, procedure.tieOff().looseVolts());
        standing.clear();
    }

    // ---- transitions ----

    private void drainAgain(String why) {
        unbond();
        rounds.begin(lastMillis);
        enter(Phase.DRAIN, why);
        load.want(!findings.anyLatched(), lastMillis, !gaps.isOwed());
        if (!card.switched() && !load.isHandOn()) {
            ask(Wish.ASK_PUT_ON);
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
        clock.restart();
        standing.clear();
        findings.changed(from, next, why);
    }

    private void ask(Wish wish) {
        if (standing.add(wish)) {
            findings.wish(wish);
        }
    }

    // ---- what others may ask ----

    private static boolean isBelow(Reading reading, double limitVolts) {
        return reading.volts() + reading.expandedVolts() < limitVolts;
    }

    private boolean isBonded() {
        return phase == Phase.TIE_OFF && !parted;
    }

    private long holdMillis() {
        return rounds.holdMillis(procedure.drain().holdMillis());
    }

    /** Whether the cell is seen at this moment, undisturbed and below the rested limit. */
    private boolean isSeenEmpty() {
        return last != null
                && isBelow(last, procedure.rest().limitVolts())
                && !Double.isNaN(sensors.celsius())
                && !sensors.isFaulty()
                && !clockOdd
                && !gaps.isOwed()
                && !findings.stands(FindingKind.SILENT)
                && !findings.stands(FindingKind.WARMING);
    }

    boolean isRested() {
        return phase == Phase.REST && standing.contains(Wish.ASK_TIE_OFF) && isSeenEmpty();
    }

    boolean isWatched() {
        return isBonded() && standing.contains(Wish.ASK_PART);
    }

    boolean isReleasable() {
        return parted && phase == Phase.TIE_OFF && standing.contains(Wish.ASK_RELEASE) && isSeenEmpty();
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
        long unbroken = phase == Phase.TIE_OFF ? procedure.tieOff().unbrokenMillis() : 0;
        return Math.max(0, Math.max(whole - clock.elapsedMillis(), unbroken - clock.unbrokenMillis()));
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
