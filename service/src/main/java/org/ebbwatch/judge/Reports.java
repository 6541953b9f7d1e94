package org.ebbwatch.judge;

import java.util.Optional;
import org.ebbwatch.judge.Entry.LeadProof;
import org.ebbwatch.judge.procedure.Procedure;

/** What is told of a passage that is neither a reading nor a person's act. */
final class Reports {
    private final Passage passage;
    private final FindingBook findings;
    private final Channel channel;
    private final OpenCircuit openCircuit;
    private final Watch watch;

    Reports(Passage passage) {
        this.passage = passage;
        this.findings = passage.findings();
        this.channel = passage.channel();
        this.openCircuit = passage.openCircuit();
        this.watch = passage.watch();
    }

    void silent() {
        findings.raise(FindingKind.SILENT, "Nothing heard from the board.");
        passage.pace().silent();
        channel.charge().interrupt();
        watch.breakOff();
    }

    void gap(long leastMillis, long mostMillis) {
        Procedure.Plausible plausible = passage.procedure().plausible();
        if (mostMillis > passage.longestStepMillis()) {
            findings.raise(
                    FindingKind.SILENT,
                    leastMillis / 1000.0,
                    plausible.silentMillis() / 1000.0,
                    "s",
                    "Nothing heard from the board for at least %3$d s.",
                    leastMillis / 1000);
        }
        if (mostMillis > plausible.pauseMillis()) {
            watch.restart();
        }
        channel.gap(mostMillis);
        interrupted();
        passage.pace().missed(passage.lastMillis());
    }

    /** Nothing before explains what comes next. */
    void interrupted() {
        passage.unseen();
        watch.breakOff();
        channel.interrupted(passage.lastMillis());
        passage.polarity().interrupt();
    }

    void moved() {
        interrupted();
        channel.gaps().forget();
        openCircuit.moved();
    }

    void recalibrated() {
        interrupted();
        channel.gaps().forget();
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
        openCircuit.leadChecked(answer, passage.lastMillis(), passage.phase() != Phase.CHECK_IN && !passage.isBonded());
        passage.obeyFindings();
    }

    void metered(double volts) {
        if (passage.isOpenCircuit()) {
            openCircuit.metered(volts, passage.lastMillis());
            passage.obeyFindings();
            if (passage.phase() == Phase.REST && passage.remainingMillis() == 0 && openCircuit.neverCameBack()) {
                passage.hold("nothing came back in a whole rest: too empty to be told from a load that is stuck");
            }
        }
    }

    void stringOpened(Optional<String> because) {
        passage.cell().leaveString();
        passage.wantLoad(false);
        passage.hold("the string's load was opened"
                + because.map(tag -> " because of " + tag).orElse("") + "; finish its cells singly");
        if (passage.load().isHandOn()) {
            findings.raise(
                    FindingKind.LOAD_STUCK,
                    "The string must come off its load now, and no board can open it: take the load off by hand.");
        }
    }

    /** Every switched load opens and stays open until a person decides; hands have to take off what hands put on. */
    void smoke() {
        if (!passage.cell().switched()) {
            return;
        }
        passage.bar();
        if (passage.phase() == Phase.DRAIN) {
            passage.hold(Passage.SMOKE);
        }
        passage.wantLoad(false);
    }

    /** Two versions of the judge disagree on where the passage is. */
    void judgedAnew(Phase left) {
        passage.hold("an updated judge sees this cell in " + passage.phase() + " where it was left in " + left);
    }

    void judgeBy(Procedure other) {
        Procedure procedure = passage.procedure();
        Phase phase = passage.phase();
        boolean stricterRest = other.rest().limitVolts() < procedure.rest().limitVolts()
                || other.rest().leastMillis() > procedure.rest().leastMillis();
        boolean stricterHold = other.drain().limitVolts() < procedure.drain().limitVolts()
                || other.drain().holdMillis() > procedure.drain().holdMillis();
        passage.judgedBy(other);
        watch.takeBackVerdicts();
        if (stricterHold) {
            passage.beginHoldAgain();
        }
        if (phase == Phase.TIE_OFF && (stricterRest || stricterHold)) {
            passage.hold("the procedure now wants more than this cell had before it was tied off");
        }
    }
}
