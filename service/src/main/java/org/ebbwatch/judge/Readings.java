package org.ebbwatch.judge;

import java.util.Locale;
import java.util.Optional;
import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.GapWatch.Suspicion;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.procedure.Procedure;

/** What a reading does to a passage: one method a phase, in the words of the procedure. */
final class Readings {
    private static final long DAY_MILLIS = 86_400_000;
    private static final long HOUR_MILLIS = 3_600_000;

    private final Passage passage;
    private final Reports reports;
    private final Hands hands;
    private final Channel channel;
    private final LoadWatch load;
    private final GapWatch gaps;
    private final FindingBook findings;
    private final OpenCircuit openCircuit;
    private final Watch watch;
    private final PolarityProof polarity;
    private final Rounds rounds;
    private final Confirmation loose = new Confirmation();

    Readings(Passage passage, Reports reports) {
        this.passage = passage;
        this.reports = reports;
        this.hands = new Hands(passage);
        this.channel = passage.channel();
        this.load = passage.load();
        this.gaps = channel.gaps();
        this.findings = passage.findings();
        this.openCircuit = passage.openCircuit();
        this.watch = passage.watch();
        this.polarity = passage.polarity();
        this.rounds = passage.rounds();
    }

    void scan(Scan scan) {
        long missing = passage.pace().since(scan.eventMillis());
        if (missing > passage.longestStepMillis()) {
            reports.gap(missing, missing);
        }
        findings.clear(FindingKind.SILENT);
        boolean wasCutOff = findings.stands(FindingKind.CUT_OFF);
        long watched = passage.pace().heard(scan.eventMillis());
        Reading now = channel.read(scan, watched, passage.phase(), passage.isBonded(), isComparable());
        passage.seen(now);
        if (now.switched()) {
            switched(now);
        }
        if (channel.suspicion() == Suspicion.SWAPPED) {
            suspectSwap(now);
        }
        if (!wasCutOff && findings.stands(FindingKind.CUT_OFF)) {
            polarity.revoke();
        }
        passage.obeyFindings();
        if (load.isOn() || passage.isBonded()) {
            openCircuit.beforeOpening(now, load.isOn());
        }
        hands.recognise();
        judge(now);
        load.persist(now.atMillis(), !gaps.isOwed());
    }

    private void judge(Reading now) {
        switch (passage.phase()) {
            case CHECK_IN -> checkIn(now);
            case DRAIN -> drain(now);
            case REST -> rest(now);
            case TIE_OFF -> tieOff(now);
            case HELD -> held(now);
            default -> throw new IllegalStateException("a reading in " + passage.phase());
        }
    }

    /** Whether another cell on the channel would be noticed: this one was seen, and its lead is not off. */
    private boolean isComparable() {
        boolean seen = passage.phase() != Phase.CHECK_IN || polarity.isProven();
        return seen && !findings.stands(FindingKind.LEAD_OPEN);
    }

    private void switched(Reading now) {
        if (load.isOn()) {
            findings.clear(FindingKind.REBOUND);
        } else {
            openCircuit.loadOff(now.atMillis(), now.expandedVolts());
            passage.loadWentOff();
        }
    }

    private void suspectSwap(Reading now) {
        polarity.revoke();
        passage.hold(String.format(
                Locale.ROOT, "another cell? %.3f V before a gap, %.3f V after it", gaps.before(), now.volts()));
    }

    private void checkIn(Reading now) {
        prove(now);
        if (polarity.isProven()) {
            watch.ask(Wish.ASK_PUT_ON);
        }
    }

    private void prove(Reading now) {
        double proven = passage.procedure().drain().provenVolts();
        polarity.follow(now.atMillis(), now.isSurelyAbove(proven));
    }

    private void drain(Reading now) {
        Procedure.Drain drain = passage.procedure().drain();
        if (rounds.drainingMillis(now.atMillis()) > drain.longestMillis()) {
            passage.hold("drained for " + drain.longestMillis() / DAY_MILLIS + " days and still not empty");
            return;
        }
        if (!load.isOn()) {
            return;
        }
        if (now.isKnown() && !now.isBelow(drain.limitVolts())) {
            if (!hands.mayBeAtIt(now.atMillis())) {
                passage.beginHoldAgain();
            }
            return;
        }
        hands.leftIt();
        watch.count(now, now.volts(), Phase.DRAIN);
        if (!watch.hasLasted(passage.holdMillis(), 0)) {
            return;
        }
        rounds.holdDone();
        if (passage.cell().switched()) {
            passage.enterRest("held below the drain limit for " + passage.holdMillis() / HOUR_MILLIS + " h");
        } else {
            watch.ask(Wish.ASK_TAKE_OFF);
        }
    }

    private void rest(Reading now) {
        if (load.isOn() || !isUndisturbed(now)) {
            return;
        }
        boolean over =
                watchOpen(now, Wish.ASK_TIE_OFF, passage.procedure().rest().leastMillis(), 0);
        if (openCircuit.isStuck(now)) {
            passage.obeyFindings();
        } else if (over && !rounds.isHoldDone()) {
            passage.drainAgain("taken off before its hold was complete");
        } else if (openCircuit.isUnseen() || (over && openCircuit.isUnproven())) {
            watch.ask(Wish.ASK_METER);
        } else if (!gaps.isOwed()) {
            openCircuit.willComeBack(now).ifPresent(to -> cameBack(to.limitAfterMillis()));
        }
    }

    private void tieOff(Reading now) {
        if (!passage.isBonded()) {
            parted(now);
            return;
        }
        Procedure.TieOff tieOff = passage.procedure().tieOff();
        if (isTieLoose(now, tieOff.looseVolts())) {
            return;
        }
        watch.count(now, channel.sensors().excess(), Phase.TIE_OFF);
        if (watch.hasLasted(tieOff.watchMillis(), tieOff.unbrokenMillis())) {
            watch.ask(Wish.ASK_PART);
        }
    }

    private boolean isTieLoose(Reading now, double looseVolts) {
        if (!now.isKnown()) {
            return findings.stands(FindingKind.TIE_LOOSE);
        }
        boolean above = now.isSurelyAbove(looseVolts);
        if (loose.holds(above && !now.announced(), now.atMillis())) {
            findings.raise(
                    FindingKind.TIE_LOOSE, now.volts(), looseVolts, "V", "The bond is loose: %1$.3f V across it.");
        } else if (!above) {
            findings.clear(FindingKind.TIE_LOOSE);
        }
        return above || findings.stands(FindingKind.TIE_LOOSE);
    }

    /** The bond is parted: the last measurement before release. */
    private void parted(Reading now) {
        if (load.isOn() || !isUndisturbed(now)) {
            return;
        }
        Procedure.TieOff tieOff = passage.procedure().tieOff();
        watchOpen(now, Wish.ASK_RELEASE, tieOff.openMillis(), tieOff.unbrokenMillis());
        boolean longest = watch.hasLasted(tieOff.longestOpenMillis(), 0);
        if (longest && openCircuit.showsNoCell()) {
            passage.obeyFindings();
        } else if (openCircuit.isUnseen() || (longest && openCircuit.isUnproven())) {
            watch.ask(Wish.ASK_METER);
        } else if (!gaps.isOwed()) {
            openCircuit.willComeBack(now).ifPresent(to -> cameBack(to.limitAfterMillis()));
        }
    }

    /** Whether the cell neither lost its lead nor came back; acts on it if it did. */
    private boolean isUndisturbed(Reading now) {
        if (channel.isWeighingReversal() || openCircuit.isWeighing(now)) {
            return false;
        }
        if (openCircuit.leadCameOff(now)) {
            passage.obeyFindings();
            return false;
        }
        if (!gaps.isOwed() && openCircuit.awaitsConfirmation(now)) {
            return false;
        }
        if (!gaps.isOwed() && openCircuit.cameBack(now)) {
            cameBack(openCircuit.forMillis(now.atMillis()));
            return false;
        }
        Optional<String> doubt = openCircuit.sinks().or(openCircuit::standsAboveItsRest);
        if (!now.announced() && doubt.isPresent()) {
            passage.hold(doubt.get());
            return false;
        }
        return true;
    }

    /** Watches the open circuit; asks for the verdict once it is whole and proven. Says whether it is whole. */
    private boolean watchOpen(Reading now, Wish verdict, long wholeMillis, long unbrokenMillis) {
        watch.count(now, now.volts(), passage.phase());
        boolean over = watch.hasLasted(wholeMillis, unbrokenMillis);
        boolean ready = over && rounds.isHoldDone() && openCircuit.isProven(now.atMillis(), watch.isAsked(verdict));
        if (ready) {
            watch.takeBack(Wish.ASK_METER);
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
        if (openCircuit.isWeighing(now)) {
            return;
        }
        if (!gaps.isOwed()) {
            openCircuit.cameBack(now);
        }
        boolean explained = findings.stands(FindingKind.LEAD_OPEN)
                || findings.stands(FindingKind.CUT_OFF)
                || findings.stands(FindingKind.LOAD_LOST);
        if (passage.wentOffWhileHeld() && !explained && load.recoveryShouldShow(now.differenceVolts())) {
            openCircuit.follow(now);
            openCircuit.isStuck(now);
        }
    }

    private void cameBack(long afterMillis) {
        if (rounds.reboundTookNoLonger(afterMillis)) {
            passage.hold("two longer holds brought no lower rest");
            return;
        }
        rounds.cameBack();
        passage.drainAgain(findings.line(FindingKind.REBOUND));
    }
}
