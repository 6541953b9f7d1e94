package org.ebbwatch.judge;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import org.ebbwatch.judge.Entry.LeadProof;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.CellString;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;

/**
 * One cell, its leads, its load, a board and a person, played to one judge.
 *
 * <p>The cell is two voltages: what it shows on its load and what it comes back to, exponentially. The board switches
 * the load and checks the lead when asked to, at the next scan, as far as it is told to be able to. Every entry is kept,
 * so that a journal can be folded a second time.
 */
final class PassageBench extends BenchChannel<PassageBench> {
    private final Judge judge;
    private final List<Entry> journal = new ArrayList<>();
    private final List<Outcome.Event> events = new ArrayList<>();
    private final List<Wish> waiting = new ArrayList<>();

    private PassageBench(CellCard card, Procedure procedure) {
        super(card);
        this.judge = new Judge(card, procedure);
    }

    @Override
    PassageBench self() {
        return this;
    }

    // ---- the cell on the bench ----

    static CellCard switchedCell() {
        return new CellCard("A1", Chemistry.LAYERED_OXIDE, 3.0, 10.0, true, false);
    }

    static CellCard handLoadedCell() {
        return new CellCard("A2", Chemistry.LAYERED_OXIDE, 3.0, 10.0, false, false);
    }

    static CellCard stringCell() {
        return new CellCard("A3", Chemistry.LAYERED_OXIDE, 3.0, 10.0, true, true);
    }

    /** One of three, hand-loaded or switched. */
    static CellCard cellOfThree(boolean switched) {
        return new CellCard(
                "A4", Chemistry.LAYERED_OXIDE, 3.0, 10.0, switched, true, Optional.of(new CellString("P1", 0, 3)));
    }

    static PassageBench of(CellCard card) {
        return new PassageBench(card, Procedure.careful());
    }

    static PassageBench of(CellCard card, Procedure procedure) {
        return new PassageBench(card, procedure);
    }

    static PassageBench switched() {
        return of(switchedCell());
    }

    static PassageBench handLoaded() {
        return of(handLoadedCell());
    }

    static PassageBench handLoaded(Procedure procedure) {
        return of(handLoadedCell(), procedure);
    }

    /** Careful, but with another limit for the rest. */
    static Procedure restedBelow(double volts) {
        Procedure careful = Procedure.careful();
        Procedure.Rest rest = careful.rest();
        return new Procedure(
                "rested below " + volts,
                1,
                careful.drain(),
                new Procedure.Rest(volts, rest.leastMillis(), rest.recoveryMillis()),
                careful.tieOff(),
                careful.heat(),
                careful.plausible());
    }

    // ---- situations, each on the way of the one before ----

    PassageBench checkedIn() {
        return watch(minutes(1));
    }

    PassageBench draining() {
        return checkedIn().act(Act.PUT_ON).watch(minutes(10));
    }

    /** Falls on its load for twenty minutes. */
    PassageBench drainedTo(double comesBackTo, double onLoad) {
        return cell(comesBackTo, onLoad).watch(minutes(20));
    }

    /** Empty under load; comes back to 0.30 V. */
    PassageBench emptied() {
        return drainedTo(0.30, 0.03);
    }

    /** Load off after its hold. */
    PassageBench resting() {
        draining().emptied().watch(hours(12)).watch(minutes(1));
        if (!card().switched()) {
            act(Act.TAKE_OFF);
        }
        return watch(minutes(11));
    }

    PassageBench rested() {
        return resting().watch(hours(24));
    }

    PassageBench tiedOff() {
        return rested().act(Act.TIE_OFF).watch(minutes(1));
    }

    PassageBench soaked() {
        return tiedOff().watch(hours(24));
    }

    PassageBench parted() {
        return soaked().act(Act.PART).watch(minutes(1));
    }

    PassageBench releasable() {
        return parted().watch(minutes(62));
    }

    // ---- what happens ----

    /** Warms or cools evenly. */
    PassageBench warmTo(double cellCelsius, Duration over) {
        double from = celsius();
        double whole = over.toMillis() / 1000.0;
        return watchWhile(over, at -> celsius(from + (cellCelsius - from) * Math.min(1, at / whole)));
    }

    /** Watches for a while: every second up to half an hour, every four seconds beyond. */
    PassageBench watch(Duration howLong) {
        long interval = howLong.toMillis() <= minutes(30).toMillis() ? 1_000 : 4_000;
        return watch(howLong, interval);
    }

    PassageBench watch(Duration howLong, long intervalMillis) {
        long until = millis() + howLong.toMillis();
        while (millis() + intervalMillis <= until) {
            pass(intervalMillis);
            carryOut();
            fold(read());
        }
        return this;
    }

    /** Watches second by second until {@code reached}; false if it was not within {@code limit}. */
    boolean watchUntil(BooleanSupplier reached, Duration limit) {
        long until = millis() + limit.toMillis();
        while (!reached.getAsBoolean()) {
            if (millis() >= until) {
                return false;
            }
            watch(seconds(1));
        }
        return true;
    }

    /** Watches while a quantity changes: {@code each} sees the seconds since the start before each scan. */
    PassageBench watchWhile(Duration howLong, DoubleConsumer each) {
        long from = millis();
        while (millis() - from < howLong.toMillis()) {
            each.accept((millis() + 1_000 - from) / 1000.0);
            watch(seconds(1));
        }
        return this;
    }

    /** A person does something and says so; what was refused by the judge is done all the same only for hand loads. */
    PassageBench act(Act act) {
        boolean allowed = judge.allowed().contains(act);
        switch (act) {
            case PUT_ON -> handLoad(!card().switched());
            case TAKE_OFF -> handLoad(false);
            case TIE_OFF -> bond(isBonded() || allowed);
            case PART, SPARK -> bond(isBonded() && !allowed);
            default -> {}
        }
        fold(new Entry.Acted(millis(), act));
        return this;
    }

    PassageBench meter(double volts) {
        return fold(new Entry.Metered(millis(), volts));
    }

    PassageBench announce(Duration window) {
        return fold(new Entry.Announced(millis(), millis() + window.toMillis()));
    }

    PassageBench gap(Duration howLong) {
        pass(howLong.toMillis());
        return fold(new Entry.Gap(millis(), howLong.toMillis(), howLong.toMillis()));
    }

    /** Time passes without a scan and without a word about it. */
    PassageBench nothingSeenFor(Duration howLong) {
        pass(howLong.toMillis());
        return this;
    }

    /** The service is killed before it carries out what the judge wished. */
    PassageBench wishesLost() {
        waiting.clear();
        return this;
    }

    PassageBench silence() {
        return fold(new Entry.Silence(millis()));
    }

    PassageBench reboot() {
        openSwitch();
        waiting.clear();
        return fold(new Entry.Reboot(millis()));
    }

    PassageBench clockOdd(boolean odd) {
        return fold(new Entry.ClockJudged(millis(), odd));
    }

    PassageBench leadChecked(LeadProof proof) {
        return fold(new Entry.LeadChecked(millis(), proof));
    }

    PassageBench judgeBy(Procedure procedure) {
        return fold(new Entry.ProcedureChanged(millis(), procedure));
    }

    PassageBench moved() {
        return fold(new Entry.Moved(millis(), "board", 3));
    }

    PassageBench recalibrated() {
        return fold(new Entry.CalibrationChanged(millis()));
    }

    PassageBench stringOpened() {
        openSwitch();
        return fold(new Entry.StringOpened(millis()));
    }

    PassageBench stringOpenedBecauseOf(String tag) {
        return fold(new Entry.StringOpened(millis(), Optional.of(tag)));
    }

    PassageBench ownLoad(double ohms, boolean switched) {
        return fold(new Entry.OwnLoad(millis(), ohms, switched));
    }

    // ---- what came of it ----

    Judge judge() {
        return judge;
    }

    Phase phase() {
        return judge.phase();
    }

    List<Entry> journal() {
        return journal;
    }

    List<Outcome.Event> events() {
        return events;
    }

    Set<FindingKind> standing() {
        EnumSet<FindingKind> kinds = EnumSet.noneOf(FindingKind.class);
        Collection<Finding> findings = judge.findings();
        findings.forEach(finding -> kinds.add(finding.kind()));
        return kinds;
    }

    boolean stands(FindingKind kind) {
        return standing().contains(kind);
    }

    /** Every kind that was ever raised, in order, with repetitions. */
    List<FindingKind> raised() {
        return events.stream()
                .filter(Outcome.Raised.class::isInstance)
                .map(event -> ((Outcome.Raised) event).finding().kind())
                .toList();
    }

    List<Wish> wishes() {
        return events.stream()
                .filter(Outcome.Wished.class::isInstance)
                .map(event -> ((Outcome.Wished) event).wish())
                .toList();
    }

    boolean isLoaded() {
        return currentFlows();
    }

    PassageBench forgetEvents() {
        events.clear();
        return this;
    }

    // ---- inside ----

    static Duration seconds(long count) {
        return Duration.ofSeconds(count);
    }

    static Duration minutes(long count) {
        return Duration.ofMinutes(count);
    }

    static Duration hours(long count) {
        return Duration.ofHours(count);
    }

    private void carryOut() {
        for (Wish wish : List.copyOf(waiting)) {
            switch (wish) {
                case CLOSE_LOAD -> command(true);
                case OPEN_LOAD -> command(false);
                case CHECK_LEAD -> answerLeadCheck();
                default -> {}
            }
        }
        waiting.clear();
    }

    private void answerLeadCheck() {
        switch (leadChecks()) {
            case HONEST -> leadChecked(isAttachedOrShorted() ? LeadProof.ATTACHED : LeadProof.OPEN);
            case CANNOT -> leadChecked(LeadProof.NOT_DONE);
            case NEVER_ANSWERED -> {}
        }
    }

    PassageBench fold(Entry entry) {
        journal.add(entry);
        Outcome outcome = judge.fold(entry);
        events.addAll(outcome.events());
        for (Outcome.Event event : outcome.events()) {
            if (event instanceof Outcome.Wished wished) {
                waiting.add(wished.wish());
            }
        }
        return this;
    }
}
