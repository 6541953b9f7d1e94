package org.ebbwatch.judge;

import java.time.Duration;
import java.util.function.DoubleUnaryOperator;
import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.Entry.Suspicion;
import org.ebbwatch.judge.procedure.CellCard;

/**
 * What is so on one channel, whatever the judge thinks of it: the cell, its leads, its load, the room, the converter and the
 * board's switch; and what the board reads of it.
 *
 * @param <B> what its methods return, to be chained
 */
abstract class BenchChannel<B extends BenchChannel<B>> {
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
    private final BenchCell cell = new BenchCell();
    private long millis = 1_000_000;
    private int scans;

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
    private double stringVolts = Double.NaN;

    private Lead lead = Lead.ATTACHED;
    private LeadChecks leadChecks = LeadChecks.HONEST;
    private boolean unipolar;
    private boolean boardObeys = true;
    private boolean switchSays;
    private boolean resistorBroken;
    private boolean contactWelded;
    private boolean handOn;
    private boolean bonded;

    BenchChannel(CellCard card) {
        this.card = card;
    }

    abstract B self();

    B cell(double comesBackTo, double onLoad) {
        cell.become(comesBackTo, onLoad);
        return self();
    }

    /** The cell is full, whatever the board reads. */
    B full() {
        return cell(3.9, 3.8);
    }

    /** Falls on its load within one scan. */
    B collapsesTo(double comesBackTo, double onLoad) {
        cell.become(comesBackTo, onLoad);
        cell.collapse();
        return self();
    }

    /** Another cell stands here at once, without any recovery to be seen. */
    B swapFor(double standsAt, double onLoad) {
        cell.become(standsAt, onLoad);
        cell.settle();
        return self();
    }

    B recoveringOver(double seconds) {
        cell.recoverOver(seconds);
        return self();
    }

    B celsius(double cellCelsius) {
        celsius = cellCelsius;
        flickers = true;
        return self();
    }

    /** Without the flicker of a last digit. */
    B celsiusExactly(double cellCelsius) {
        celsius = cellCelsius;
        flickers = false;
        return self();
    }

    B ambient(double ambientCelsius) {
        ambient = ambientCelsius;
        return self();
    }

    B reference(double dummyCelsius) {
        reference = dummyCelsius;
        return self();
    }

    B bank(double bankCelsius) {
        bank = bankCelsius;
        return self();
    }

    B suspicion(Suspicion boardSays) {
        suspicion = boardSays;
        return self();
    }

    B readsCurrent() {
        readsCurrent = true;
        return self();
    }

    B converter(double expandedVolts, double resolutionVolts) {
        expanded = expandedVolts;
        resolution = resolutionVolts;
        return self();
    }

    /** The converter knows nothing below zero. */
    B unipolar() {
        unipolar = true;
        return self();
    }

    /** Whatever the cell does, this is read. */
    B reads(double volts) {
        forcedVolts = volts;
        voltsForced = true;
        return self();
    }

    B readsTheCellAgain() {
        voltsForced = false;
        return self();
    }

    /** All cells of its string together. */
    B stringVolts(double volts) {
        stringVolts = volts;
        return self();
    }

    B readsAmperes(double amperes) {
        forcedAmperes = amperes;
        return self();
    }

    B lead(Lead now) {
        lead = now;
        return self();
    }

    B floating(DoubleUnaryOperator voltsAfterSeconds) {
        long since = millis;
        lead = Lead.OFF_FLOATING;
        drift = now -> voltsAfterSeconds.applyAsDouble(now - since / 1000.0);
        return self();
    }

    /** The open-circuit voltage itself sinks a little, evenly. */
    B sinkingTo(double volts, Duration over) {
        cell.sink(volts, over.toMillis() / 1000.0);
        return self();
    }

    B leadChecks(LeadChecks how) {
        leadChecks = how;
        return self();
    }

    B boardIgnoresLoadCommands() {
        boardObeys = false;
        return self();
    }

    B boardObeysAgain() {
        boardObeys = true;
        return self();
    }

    B switchFoundOn() {
        switchSays = true;
        return self();
    }

    /** The board's switch works, but no current flows. */
    B resistorBroken() {
        resistorBroken = true;
        return self();
    }

    /** The board says open, but current flows on. */
    B contactWelded() {
        contactWelded = true;
        return self();
    }

    B partQuietly() {
        bonded = false;
        return self();
    }

    /** A person puts the resistor on or takes it off and tells nobody. */
    B handLoadQuietly(boolean on) {
        handOn = on;
        return self();
    }

    /** What a meter at the cell's own terminals reads. */
    double trueVolts() {
        return cell.lastVolts();
    }

    /** Whether the cell on the channel is empty, stands open, and is what the board reads. */
    boolean isEmptyAndSeen() {
        return cell.restVolts() < 0.5 && lead == Lead.ATTACHED && !bonded && !currentFlows() && !voltsForced;
    }

    final CellCard card() {
        return card;
    }

    final long millis() {
        return millis;
    }

    final double celsius() {
        return celsius;
    }

    final LeadChecks leadChecks() {
        return leadChecks;
    }

    final boolean isAttachedOrShorted() {
        return lead != Lead.OFF_FLOATING;
    }

    final void pass(long passingMillis) {
        millis += passingMillis;
    }

    final void bond(boolean now) {
        bonded = now;
    }

    final boolean isBonded() {
        return bonded;
    }

    final void handLoad(boolean on) {
        handOn = on;
    }

    /** The board is told to close or open its switch. */
    final void command(boolean closed) {
        if (boardObeys) {
            switchSays = closed;
        }
    }

    /** The board opens its switch by itself. */
    final void openSwitch() {
        switchSays = false;
    }

    final boolean currentFlows() {
        boolean closed = card.switched() ? switchSays || contactWelded : handOn;
        return closed && !resistorBroken && !bonded;
    }

    /** What the board reads at this moment. */
    final Scan read() {
        double terminal = terminalVolts();
        double volts = voltsForced ? forcedVolts : terminal;
        var scan = new Scan(
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
                suspicion,
                stringVolts);
        scans++;
        return scan;
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
}
