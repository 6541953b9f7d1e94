package org.ebbwatch.judge;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import java.util.function.DoubleUnaryOperator;
import org.ebbwatch.judge.Entry.LeadProof;
import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.Entry.Suspicion;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;

/**
 * One cell, its leads, its load, a board and a person, played to one judge.
 *
 * <p>The cell is two voltages: what it shows on its load and what it comes back to, exponentially. The board switches
 * the load and checks the lead when asked to, at the next scan, as far as it is told to be able to. Every entry is kept,
 * so that a journal can be folded a second time.
 */
final class PassageBench {
    static final double RESOLUTION_VOLTS = 1e-4;
    static final double EXPANDED_VOLTS = 2e-3;

    /** How the sense leads of the channel are. */
    enum Lead {
        ATTACHED,
        /** Off, with a resistor left across the input: reads zero, and a weak pull-up does not move it. */
        OFF_ACROSS_RESISTOR,
        /** Off, nothing across the input: wanders, and a weak pull-up moves it. */
        OFF_FLOATING
    }

    /** What the board does about lead checks. */
    enum LeadChecks {
        HONEST,
        CANNOT,
        NEVER_ANSWERED
    }

    private final CellCard card;
    private final Judge judge;
    private final List<Entry> journal = new ArrayList<>();
    private final List<Outcome.Event> events = new ArrayList<>();
    private final List<Wish> waiting = new ArrayList<>();

    private long millis = 1_000_000;
    private int scans;

    private final BenchCell cell = new BenchCell();
    private DoubleUnaryOperator drift = seconds -> 0;
    private double celsius = 22;
    private boolean flickers = true;
    private double ambient = 21;
    private double reference = Double.NaN;
    private double bank = Double.NaN;
    private double expanded = EXPANDED_VOLTS;
    private double resolution = RESOLUTION_VOLTS;
    private boolean readsCurrent;
    private Suspicion suspicion = Suspicion.NONE;
    private double forcedVolts = Double.NaN;
    private boolean voltsForced;
    private double forcedAmperes = Double.NaN;

    private Lead lead = Lead.ATTACHED;
    private LeadChecks leadChecks = LeadChecks.HONEST;
    private boolean unipolar;
    private boolean boardObeys = true;
    private boolean switchSays;
    private boolean resistorBroken;
    private boolean contactWelded;
    private boolean handOn;
    private boolean bonded;

    private PassageBench(CellCard card, Procedure procedure) {
        this.card = card;
        this.judge = new Judge(card, procedure);
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
        if (!card.switched()) {
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

    // ---- the truth ----

    PassageBench cell(double comesBackTo, double onLoad) {
        cell.become(comesBackTo, onLoad);
        return this;
    }

    /** Falls on its load within one scan. */
    PassageBench collapsesTo(double comesBackTo, double onLoad) {
        cell.become(comesBackTo, onLoad);
        cell.collapse();
        return this;
    }

    /** Another cell stands here at once, without any recovery to be seen. */
    PassageBench swapFor(double standsAt, double onLoad) {
        cell.become(standsAt, onLoad);
        cell.settle();
        return this;
    }

    PassageBench recoveringOver(double seconds) {
        cell.recoverOver(seconds);
        return this;
    }

    PassageBench celsius(double cellCelsius) {
        celsius = cellCelsius;
        flickers = true;
        return this;
    }

    /** Without the flicker of a last digit. */
    PassageBench celsiusExactly(double cellCelsius) {
        celsius = cellCelsius;
        flickers = false;
        return this;
    }

    /** Warms or cools evenly. */
    PassageBench warmTo(double cellCelsius, Duration over) {
        double from = celsius;
        double whole = over.toMillis() / 1000.0;
        return watchWhile(over, at -> celsius(from + (cellCelsius - from) * Math.min(1, at / whole)));
    }

    PassageBench ambient(double ambientCelsius) {
        ambient = ambientCelsius;
        return this;
    }

    PassageBench reference(double dummyCelsius) {
        reference = dummyCelsius;
        return this;
    }

    PassageBench bank(double bankCelsius) {
        bank = bankCelsius;
        return this;
    }

    PassageBench suspicion(Suspicion boardSays) {
        suspicion = boardSays;
        return this;
    }

    PassageBench readsCurrent() {
        readsCurrent = true;
        return this;
    }

    PassageBench converter(double expandedVolts, double resolutionVolts) {
        expanded = expandedVolts;
        resolution = resolutionVolts;
        return this;
    }

    /** The converter knows nothing below zero. */
    PassageBench unipolar() {
        unipolar = true;
        return this;
    }

    /** Whatever the cell does, this is read. */
    PassageBench reads(double volts) {
        forcedVolts = volts;
        voltsForced = true;
        return this;
    }

    PassageBench readsTheCellAgain() {
        voltsForced = false;
        return this;
    }

    PassageBench readsAmperes(double amperes) {
        forcedAmperes = amperes;
        return this;
    }

    PassageBench lead(Lead now) {
        lead = now;
        return this;
    }

    PassageBench floating(DoubleUnaryOperator voltsAfterSeconds) {
        long since = millis;
        lead = Lead.OFF_FLOATING;
        drift = now -> voltsAfterSeconds.applyAsDouble(now - since / 1000.0);
        return this;
    }

    /** The open-circuit voltage itself sinks a little, evenly. */
    PassageBench sinkingTo(double volts, Duration over) {
        cell.sink(volts, over.toMillis() / 1000.0);
        return this;
    }

    PassageBench leadChecks(LeadChecks how) {
        leadChecks = how;
        return this;
    }

    PassageBench boardIgnoresLoadCommands() {
        boardObeys = false;
        return this;
    }

    PassageBench boardObeysAgain() {
        boardObeys = true;
        return this;
    }

    PassageBench switchFoundOn() {
        switchSays = true;
        return this;
    }

    /** The board's switch works, but no current flows. */
    PassageBench resistorBroken() {
        resistorBroken = true;
        return this;
    }

    /** The board says open, but current flows on. */
    PassageBench contactWelded() {
        contactWelded = true;
        return this;
    }

    PassageBench partQuietly() {
        bonded = false;
        return this;
    }

    /** A person puts the resistor on or takes it off and tells nobody. */
    PassageBench handLoadQuietly(boolean on) {
        handOn = on;
        return this;
    }

    // ---- what happens ----

    /** Watches for a while: every second up to half an hour, every four seconds beyond. */
    PassageBench watch(Duration howLong) {
        long interval = howLong.toMillis() <= minutes(30).toMillis() ? 1_000 : 4_000;
        return watch(howLong, interval);
    }

    PassageBench watch(Duration howLong, long intervalMillis) {
        long until = millis + howLong.toMillis();
        while (millis + intervalMillis <= until) {
            millis += intervalMillis;
            scan();
        }
        return this;
    }

    /** Watches second by second until {@code reached}; false if it was not within {@code limit}. */
    boolean watchUntil(BooleanSupplier reached, Duration limit) {
        long until = millis + limit.toMillis();
        while (!reached.getAsBoolean()) {
            if (millis >= until) {
                return false;
            }
            watch(seconds(1));
        }
        return true;
    }

    /** Watches while a quantity changes: {@code each} sees the seconds since the start before each scan. */
    PassageBench watchWhile(Duration howLong, DoubleConsumer each) {
        long from = millis;
        while (millis - from < howLong.toMillis()) {
            each.accept((millis + 1_000 - from) / 1000.0);
            watch(seconds(1));
        }
        return this;
    }

    /** A person does something and says so; what was refused by the judge is done all the same only for hand loads. */
    PassageBench act(Act act) {
        boolean allowed = judge.allowed().contains(act);
        switch (act) {
            case PUT_ON -> handOn = !card.switched();
            case TAKE_OFF -> handOn = false;
            case TIE_OFF -> bonded |= allowed;
            case PART, SPARK -> bonded &= !allowed;
            default -> {}
        }
        fold(new Entry.Acted(millis, act));
        return this;
    }

    PassageBench meter(double volts) {
        return fold(new Entry.Metered(millis, volts));
    }

    PassageBench announce(Duration window) {
        return fold(new Entry.Announced(millis, millis + window.toMillis()));
    }

    PassageBench gap(Duration howLong) {
        millis += howLong.toMillis();
        return fold(new Entry.Gap(millis, howLong.toMillis(), howLong.toMillis()));
    }

    /** Time passes without a scan and without a word about it. */
    PassageBench nothingSeenFor(Duration howLong) {
        millis += howLong.toMillis();
        return this;
    }

    PassageBench silence() {
        return fold(new Entry.Silence(millis));
    }

    PassageBench reboot() {
        switchSays = false;
        waiting.clear();
        return fold(new Entry.Reboot(millis));
    }

    PassageBench clockOdd(boolean odd) {
        return fold(new Entry.ClockJudged(millis, odd));
    }

    PassageBench leadChecked(LeadProof proof) {
        return fold(new Entry.LeadChecked(millis, proof));
    }

    PassageBench judgeBy(Procedure procedure) {
        return fold(new Entry.ProcedureChanged(millis, procedure));
    }

    PassageBench moved() {
        return fold(new Entry.Moved(millis, "board", 3));
    }

    PassageBench recalibrated() {
        return fold(new Entry.CalibrationChanged(millis));
    }

    PassageBench stringOpened() {
        switchSays = false;
        return fold(new Entry.StringOpened(millis));
    }

    // ---- what came of it ----

    Judge judge() {
        return judge;
    }

    Phase phase() {
        return judge.phase();
    }

    long millis() {
        return millis;
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

    private boolean currentFlows() {
        boolean closed = card.switched() ? switchSays || contactWelded : handOn;
        return closed && !resistorBroken && !bonded;
    }

    private void scan() {
        carryOut();
        double volts = voltsForced ? forcedVolts : terminalVolts();
        fold(new Scan(
                millis,
                volts,
                expanded,
                resolution,
                amperes(volts),
                flickers ? celsius + jitter(3) * 0.02 : celsius,
                ambient + jitter(5) * 0.01,
                reference,
                bank,
                switchSays,
                suspicion));
        scans++;
    }

    private double amperes(double volts) {
        if (!Double.isNaN(forcedAmperes)) {
            return forcedAmperes;
        }
        if (!readsCurrent) {
            return Double.NaN;
        }
        return currentFlows() ? volts / card.loadOhms() : 0.0002;
    }

    /** What the cell and the leads show, with a count of noise. */
    private double terminalVolts() {
        boolean loaded = currentFlows();
        double truth = cell.volts(millis / 1000.0, loaded, bonded);
        if (lead == Lead.OFF_ACROSS_RESISTOR) {
            truth = 0;
        } else if (lead == Lead.OFF_FLOATING) {
            truth = loaded ? 0 : drift.applyAsDouble(millis / 1000.0);
        }
        double read = Math.rint(truth / resolution + jitter(2)) * resolution;
        return unipolar ? Math.max(0, read) : read;
    }

    /** A repeatable small disturbance between -1 and 1. */
    private double jitter(int salt) {
        long mixed = (scans + 1L) * 0x9E3779B97F4A7C15L + salt * 0xBF58476D1CE4E5B9L;
        mixed = (mixed ^ (mixed >>> 29)) * 0x94D049BB133111EBL;
        return ((mixed >>> 11) & 0xFFFF) / 32768.0 - 1;
    }

    private void carryOut() {
        for (Wish wish : List.copyOf(waiting)) {
            switch (wish) {
                case CLOSE_LOAD -> switchSays |= boardObeys;
                case OPEN_LOAD -> switchSays &= !boardObeys;
                case CHECK_LEAD -> answerLeadCheck();
                default -> {}
            }
        }
        waiting.clear();
    }

    private void answerLeadCheck() {
        switch (leadChecks) {
            case HONEST -> leadChecked(lead == Lead.OFF_FLOATING ? LeadProof.OPEN : LeadProof.ATTACHED);
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
