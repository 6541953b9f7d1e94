package org.ebbwatch.judge;

import java.util.Optional;
import org.ebbwatch.judge.Entry.LeadProof;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.RestOutlook.Outlook;
import org.ebbwatch.judge.procedure.Procedure;

/**
 * A cell with nothing across it: whether it is there at all, and what it comes back to. Raises REBOUND, LEAD_OPEN and
 * LOAD_STUCK; what follows from them is {@link Passage}'s.
 */
final class OpenCircuit {
    private final FindingBook findings;
    private final LoadWatch load;
    private final FineRecovery fine = new FineRecovery();
    private final HandStep hand;
    private final OpenCircuitProof proof;
    private final Confirmation back = new Confirmation();
    private final SinkingRest sinking = new SinkingRest();
    private Procedure procedure;
    /** From the load coming off, or the first rest without that, until it goes on or the leads are bonded. */
    private RestOutlook outlook;

    private long sinceMillis;
    private boolean parted;

    OpenCircuit(FindingBook findings, LoadWatch load, HandStep hand, Procedure procedure) {
        this.findings = findings;
        this.load = load;
        this.hand = hand;
        this.proof = new OpenCircuitProof(findings, fine);
        this.procedure = procedure;
    }

    void judgeBy(Procedure other) {
        procedure = other;
    }

    /** Follows one reading while the load is on or the leads are bonded. */
    void beforeOpening(Reading now, boolean loaded) {
        if (now.switched() && loaded) {
            fine.loadOn();
            outlook = null;
        }
        if (now.isKnown()) {
            fine.beforeOpening(now, loaded);
        }
    }

    /** The load has just gone off; where nobody said so, the step that showed it proves nothing, and more must follow. */
    void loadOff(long millis, double expandedVolts) {
        sinceMillis = millis;
        parted = false;
        fine.loadOff();
        proof.begin(load.openedAtVolts(), load.isRecognisedOff() ? expandedVolts : 0);
        back.forget();
        if (load.isRecognisedOff()) {
            proof.askAtOnce();
            fine.forget();
        }
        outlook = new RestOutlook(millis);
        sinking.begin();
    }

    /** The leads have just been bonded: what would have come back is not seen any more. */
    void bonded() {
        outlook = null;
    }

    /** The bond has just been parted; what the channel's offset or a load still on could show is no recovery. */
    void parted(long millis) {
        sinceMillis = millis;
        parted = true;
        fine.parted();
        sinking.begin();
        double offset = LoadWatch.STEP_FACTOR * proof.expandedVolts();
        double onLoad = load.beforeVolts();
        proof.begin(0, onLoad > offset ? onLoad : offset);
    }

    long forMillis(long millis) {
        return millis - sinceMillis;
    }

    /** Follows one known reading. */
    void follow(Reading now) {
        long within =
                parted ? procedure.tieOff().openMillis() : procedure.rest().recoveryMillis();
        boolean inTime = proof.watchedMillis() <= within;
        if (!inTime && !parted) {
            proof.isLate();
        }
        fine.follow(now, inTime);
        proof.follow(now);
        sinking.follow(now);
    }

    /** Why nothing may rest on this voltage: it sinks where a resting cell's cannot. */
    Optional<String> sinks() {
        return sinking.sinks() ? Optional.of(sinking.reason()) : Optional.empty();
    }

    /** Follows one reading; says whether the lead seems to be off. */
    boolean leadCameOff(Reading now) {
        if (!now.isKnown()) {
            return false;
        }
        follow(now);
        double drop = proof.impossibleDrop();
        if (drop > 0 && !now.announced() && !hand.isWeighing()) {
            findings.raise(
                    FindingKind.LEAD_OPEN,
                    drop,
                    0.0,
                    "V",
                    "Fell by %1$.3f V with the load off: a resting cell cannot, a lead came off.");
        }
        return drop > 0;
    }

    /** Whether it seems to have come back, but in too few readings yet; these are followed no further. */
    boolean isWeighing(Reading now) {
        boolean so = isBack(now);
        return !back.holds(so, now.atMillis()) && so;
    }

    /** Whether it came back so late that the board has to confirm first that this is the cell and no open input. */
    boolean awaitsConfirmation(Reading now) {
        return isBack(now) && proof.isToBeConfirmed(now.atMillis(), forMillis(now.atMillis()));
    }

    private boolean isBack(Reading now) {
        boolean explained = findings.stands(FindingKind.LEAD_OPEN) || findings.stands(FindingKind.LOAD_LOST);
        boolean below = now.isBelow(procedure.rest().limitVolts());
        return load.hasBeenOn() && now.isKnown() && !explained && !below;
    }

    /** REBOUND: whenever the load is off after it was on and V + U is above the rested limit, in more than one reading. */
    boolean cameBack(Reading now) {
        double limit = procedure.rest().limitVolts();
        if (!isBack(now) || !back.isHeld(now.atMillis())) {
            return false;
        }
        findings.raise(
                FindingKind.REBOUND,
                now.volts(),
                limit,
                "V",
                "Came back to %1$.3f V with the load off, limit %2$.2f V: not empty.");
        return true;
    }

    /** REBOUND before it happens: what the recovery so far must lead to in this rest. Empty if it leads to nothing. */
    Optional<Outlook> willComeBack(Reading now) {
        if (outlook == null) {
            outlook = new RestOutlook(now.atMillis());
        }
        Optional<Outlook> coming = outlook.follow(now, proof.smoothVolts(), procedure.rest());
        coming.ifPresent(to -> findings.raise(
                FindingKind.REBOUND,
                to.volts(),
                procedure.rest().limitVolts(),
                "V",
                "Now at %3$.3f V it will come back to %1$.3f V in its rest (%4$s), limit %2$.2f V: not empty.",
                now.volts(),
                to.sure()));
        return coming;
    }

    /**
     * LOAD_STUCK: the load is off, but no recovery was seen in the time allowed although one would have been. A cell that is
     * truly empty has next to nothing to come back with: it is watched on and stays unproven.
     */
    boolean isStuck(Reading now) {
        if (!isLate() || proof.hasBegunToRecover() || !fine.isMissed(load.leastRecoveryOfEmpty())) {
            return false;
        }
        findings.raise(
                FindingKind.LOAD_STUCK,
                proof.recoveredVolts(),
                proof.neededVolts(),
                "V",
                "Load off, but no recovery (%1$.4f V in %3$d s): load stuck, or no cell there.",
                forMillis(now.atMillis()) / 1000);
        return true;
    }

    /** Whether nothing came back in time, and not even means show a rise since. */
    boolean neverCameBack() {
        return isLate() && fine.isFlat();
    }

    /**
     * The bond was parted for as long as it may be; says whether anything speaks against a cell that is there and so empty
     * that nothing comes back.
     */
    boolean showsNoCell() {
        if (proof.hasRecovered() || !(fine.hasCollapsed() || fine.isWhereTheLoadHeldIt())) {
            return false;
        }
        findings.raise(
                FindingKind.LEAD_OPEN,
                proof.recoveredVolts(),
                proof.neededVolts(),
                "V",
                "Parted for %3$d min it stands at %1$.3f V, no higher than on its load: no cell there, or load stuck.",
                procedure.tieOff().longestOpenMillis() / 60_000);
        return true;
    }

    private boolean isLate() {
        return !proof.hasRecovered() && proof.watchedMillis() > procedure.rest().recoveryMillis();
    }

    /** Whether nothing came back that would prove that nothing shorts the cell. */
    boolean isUnproven() {
        return !proof.hasRecovered();
    }

    /** Whether nothing came back in time, nor can the board tell whether a cell is there. */
    boolean isUnseen() {
        return isLate() && proof.cannotBeChecked();
    }

    /** Whether both proofs are there; {@code already} if they were, and only need to be kept up. */
    boolean isProven(long millis, boolean already) {
        return already ? proof.stillHolds(millis) : proof.isComplete(millis);
    }

    /** Asks for the proof of attachment when it is due. */
    void askForProof(long millis, boolean verdictHangsOnIt, Watch watch) {
        proof.askWhenDue(millis, verdictHangsOnIt);
        if (verdictHangsOnIt && proof.needsMeter(millis)) {
            watch.ask(Wish.ASK_METER);
        }
    }

    void leadChecked(LeadProof answer, long millis, boolean matters) {
        proof.checked(answer, millis);
        if (matters && answer == LeadProof.OPEN) {
            findings.raise(FindingKind.LEAD_OPEN, "The lead check moved the channel: no cell is attached.");
        }
    }

    void metered(double volts, long millis) {
        if (!proof.contradicts(volts)) {
            proof.metered(volts, millis);
            return;
        }
        findings.raise(
                FindingKind.LEAD_OPEN,
                proof.smoothVolts(),
                volts,
                "V",
                "A meter reads %2$.3f V where the board reads %1$.3f V: the board is not attached.");
    }

    void moved() {
        levelsAnew();
        proof.moved();
    }

    void recalibrated() {
        levelsAnew();
        proof.levelAnew();
    }

    private void levelsAnew() {
        if (outlook != null) {
            outlook.forget();
        }
        fine.forget();
        sinking.begin();
    }
}
