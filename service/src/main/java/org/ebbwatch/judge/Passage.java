package org.ebbwatch.judge;

import java.util.Optional;
import org.ebbwatch.judge.FindingKind.LoadRule;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.estimate.TimeToLimit;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Procedure;

/**
 * The state of one passage and every transition it can make. {@link Readings} says what a reading does to it, {@link Acts}
 * what a person does, {@link Reports} what else is told of it. What is read from the channel is kept in {@link Channel},
 * what an open circuit tells in {@link OpenCircuit}, what was watched for how long in {@link Watch}.
 */
final class Passage {
    private final CellCard card;
    private final FindingBook findings = new FindingBook();
    private final Channel channel;
    private final LoadWatch load;
    private final OpenCircuit openCircuit;
    private final Watch watch;
    private final Pace pace = new Pace();
    private final PolarityProof polarity = new PolarityProof();
    private final Rounds rounds = new Rounds();

    private Procedure procedure;
    private Phase phase = Phase.CHECK_IN;
    private String reason = "checked in";
    /** V + U of the last reading; NaN where that says nothing of this moment. */
    private double highestVolts = Double.NaN;

    private long lastMillis = Long.MIN_VALUE;
    private boolean wentOffWhileHeld;
    private boolean parted;

    Passage(CellCard card, Procedure procedure) {
        this.card = card;
        this.procedure = procedure;
        this.channel = new Channel(card, procedure, findings);
        this.load = channel.load();
        this.openCircuit = new OpenCircuit(findings, load, channel.hand(), procedure);
        this.watch = new Watch(findings, channel.sensors());
    }

    /** Event time goes on; what follows belongs to this moment. */
    void reach(long millis) {
        lastMillis = millis;
        findings.at(millis, phase);
    }

    // ---- transitions ----

    /** Back to DRAIN, from wherever it is. The load closes unless something locks it. */
    void drainAgain(String why) {
        unbond();
        rounds.begin(lastMillis);
        enter(Phase.DRAIN, why);
        load.want(!findings.anyLatched(), lastMillis, !channel.gaps().isOwed());
        if (!cell().switched() && !load.isHandOn()) {
            watch.ask(Wish.ASK_PUT_ON);
        }
    }

    void enterRest(String why) {
        enter(Phase.REST, why);
        wantLoad(false);
    }

    void tieOff() {
        channel.gaps().forget();
        channel.heat().bonded(true);
        openCircuit.bonded();
        enter(Phase.TIE_OFF, "leads bonded without a spark");
    }

    /** Still TIE_OFF, but the bond is parted and the cell stands open. */
    void part() {
        unbond();
        parted = true;
        openCircuit.parted(lastMillis);
        watch.next();
    }

    private void unbond() {
        parted = false;
        channel.heat().bonded(false);
        findings.clear(FindingKind.TIE_LOOSE);
    }

    /** Stops here until a person decides. Only in DRAIN does the load stay as it is, unless a finding opens it. */
    void hold(String why) {
        if (phase == Phase.HELD) {
            return;
        }
        boolean keep = phase == Phase.DRAIN && load.isOn();
        wentOffWhileHeld = false;
        enter(Phase.HELD, why);
        if (!keep) {
            wantLoad(false);
        }
    }

    void enter(Phase next, String why) {
        Phase from = phase;
        phase = next;
        reason = why;
        if (from == Phase.DRAIN && next != Phase.DRAIN) {
            findings.clear(FindingKind.OVERDUE);
        }
        watch.begin();
        findings.changed(from, next, why);
    }

    /** The hold begins again, or what was held no longer counts. */
    void beginHoldAgain() {
        rounds.holdBroken();
        if (phase == Phase.DRAIN) {
            watch.restart();
            watch.takeBack(Wish.ASK_TAKE_OFF);
        }
    }

    /** What the findings that stand do to the phase and the load. */
    void obeyFindings() {
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

    void wantLoad(boolean closed) {
        load.want(closed, lastMillis, true);
    }

    void openLoad() {
        if (load.wanted()) {
            wantLoad(false);
        }
    }

    // ---- what a reading leaves behind ----

    void seen(Reading now) {
        highestVolts = now.volts() + now.expandedVolts();
    }

    void loadWentOff() {
        wentOffWhileHeld = phase == Phase.HELD;
    }

    /** The last reading says nothing of this moment any more. */
    void unseen() {
        highestVolts = Double.NaN;
    }

    void judgedBy(Procedure other) {
        procedure = other;
        channel.judgeBy(other);
        openCircuit.judgeBy(other);
    }

    // ---- what others may ask ----

    boolean isBonded() {
        return phase == Phase.TIE_OFF && !parted;
    }

    /** Whether nothing should be across the cell, and nothing is. */
    boolean isOpenCircuit() {
        return !load.isOn() && (phase == Phase.REST || parted);
    }

    /** Whether the cell is seen at this moment, undisturbed and below the rested limit. */
    boolean isSeenEmpty() {
        boolean below = highestVolts < procedure.rest().limitVolts();
        return below && watch.isSeen() && !channel.gaps().isOwed();
    }

    boolean wentOffWhileHeld() {
        return wentOffWhileHeld;
    }

    boolean isLocked() {
        return phase == Phase.HELD || findings.anyLatched();
    }

    /** How long the hold of this round must last. */
    long holdMillis() {
        return rounds.holdMillis(procedure.drain().holdMillis());
    }

    /** The longest stretch between two scans that is no gap. */
    long longestStepMillis() {
        return pace.longestMillis(procedure.plausible().silentMillis());
    }

    long remainingMillis() {
        Procedure.TieOff tieOff = procedure.tieOff();
        return switch (phase) {
            case DRAIN -> limitInMillis() + watch.remainingMillis(holdMillis(), 0);
            case REST -> watch.remainingMillis(procedure.rest().leastMillis(), 0);
            case TIE_OFF ->
                watch.remainingMillis(parted ? tieOff.openMillis() : tieOff.watchMillis(), tieOff.unbrokenMillis());
            default -> 0;
        };
    }

    /** When the voltage is most likely at the drain limit; 0 where it is below, or nobody can say. */
    private long limitInMillis() {
        return limitIn()
                .map(TimeToLimit::expectedMillis)
                .filter(millis -> millis != TimeToLimit.NEVER)
                .orElse(0L);
    }

    Optional<TimeToLimit> limitIn() {
        boolean draining = phase == Phase.DRAIN && load.isOn();
        return draining ? channel.drain().limitIn(procedure.drain().limitVolts()) : Optional.empty();
    }

    CellCard card() {
        return card;
    }

    /** The cell and what it is drained by now. */
    LoadedCell cell() {
        return channel.cell();
    }

    Procedure procedure() {
        return procedure;
    }

    Phase phase() {
        return phase;
    }

    String reason() {
        return reason;
    }

    long lastMillis() {
        return lastMillis;
    }

    FindingBook findings() {
        return findings;
    }

    Channel channel() {
        return channel;
    }

    LoadWatch load() {
        return load;
    }

    OpenCircuit openCircuit() {
        return openCircuit;
    }

    Watch watch() {
        return watch;
    }

    Pace pace() {
        return pace;
    }

    PolarityProof polarity() {
        return polarity;
    }

    Rounds rounds() {
        return rounds;
    }
}
