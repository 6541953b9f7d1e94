package org.ebbwatch.sim.rack;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.wire.FrameDecoder;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.FaultSchedule;
import org.ebbwatch.sim.fault.Happening;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.Scenario;

/**
 * One simulated board with everything on it. The same spec, seed, calls and bytes give the same bytes on every machine. Event
 * time moves by {@link #step} alone, one scan interval a call; within it the physics goes in equal steps of at most 10 s.
 * Stepping allocates nothing. For one thread.
 *
 * <p>The methods fall in three groups: time and bytes; what a person does (each takes 0-based channels and throws
 * {@link IllegalArgumentException} where that cannot be done); the truth.
 */
public final class SimBoard {
    private static final double STEP_MOST_SECONDS = 10;
    private static final long PARTIAL_FRAME_MOST_HOST_MILLIS = 1_000;

    private final BoardSpec spec;
    private final Bench bench;
    private final Electronics electronics;
    private final FaultSchedule faults;
    private final FaultDesk faultDesk;
    private final FrameDecoder decoder;
    private final long partialFrameMostMillis;
    private long receivedMillis;
    private long eventMillis;
    private long steppedIntervalMillis;
    private double stepSeconds;
    private int stepsPerInterval;

    /** Board of a scenario, 0 for the first. */
    public static SimBoard of(Scenario scenario, int board) {
        BoardSpec spec = scenario.boards().get(board);
        return new SimBoard(spec, scenario.seed() + board, scenario.speed(), scenario.intervalMillis());
    }

    /**
     * A board at event time 0, just powered on: its IDENTITY waits to be sent.
     *
     * @param seed decides noise, errors and spread
     * @param speed event seconds per host second that it is run at, 1 to 65535: told to the host, and used for the host
     *     timeout and for credit
     * @param intervalMillis event time between scans, 10 to 60000
     */
    public SimBoard(BoardSpec spec, long seed, int speed, long intervalMillis) {
        this.spec = spec;
        faults = new FaultSchedule(spec.faults());
        bench = new Bench(spec, seed, this::happened);
        electronics = new Electronics(spec, seed, speed, intervalMillis, bench);
        faultDesk = new FaultDesk(bench, electronics);
        decoder = new FrameDecoder(new HostDesk(spec, bench, electronics));
        partialFrameMostMillis = PARTIAL_FRAME_MOST_HOST_MILLIS * speed;
        followInterval();
    }

    private void happened(Happening happening, int channel) {
        faults.happened(happening, channel, eventMillis);
    }

    private void followInterval() {
        long interval = electronics.intervalMillis();
        if (interval != steppedIntervalMillis) {
            steppedIntervalMillis = interval;
            stepsPerInterval = (int) Math.ceil(interval / 1000.0 / STEP_MOST_SECONDS);
            stepSeconds = interval / 1000.0 / stepsPerInterval;
            bench.setStep(stepSeconds);
        }
    }

    /** Event time since the scenario's start, milliseconds. */
    public long eventMillis() {
        return eventMillis;
    }

    /** Event time between scans now, milliseconds. */
    public long intervalMillis() {
        return electronics.intervalMillis();
    }

    /**
     * Whether another {@link #step} keeps within the credit that the host has given: at most 2 s of event time past the last
     * scan it said it holds, but always one scan when nothing intact is outstanding. A board that is scripted silent or off,
     * and one at speed 1, may always.
     */
    public boolean mayStep() {
        return electronics.mayRunTo(eventMillis + electronics.intervalMillis());
    }

    /** Moves on by one interval and queues the scan at its end; gives the new event time. */
    public long step() {
        followInterval();
        eventMillis += steppedIntervalMillis;
        electronics.runTo(eventMillis);
        faults.advance(eventMillis, faultDesk);
        for (int ahead = stepsPerInterval - 1; ahead >= 0; ahead--) {
            faultDesk.grow(stepSeconds);
            bench.step(eventMillis / 1000.0 - ahead * stepSeconds);
        }
        if (decoder.isWithinFrame() && eventMillis - receivedMillis > partialFrameMostMillis) {
            decoder.giveUpPartialFrame();
        }
        electronics.guardHost();
        electronics.scan();
        return eventMillis;
    }

    /** Takes bytes from the host, cut anywhere. */
    public void receive(byte[] bytes, int offset, int length) {
        if (!electronics.isDeaf()) {
            receivedMillis = eventMillis;
            decoder.accept(bytes, offset, length);
        }
    }

    /** Moves bytes for the host into an array; gives how many. */
    public int transmit(byte[] into) {
        return electronics.outbox().take(into);
    }

    /** All bytes that wait for the host. */
    public byte[] takeOutput() {
        return electronics.outbox().takeAll();
    }

    /** Puts a cell on a free cell channel, or into a free watch place. */
    public void putOn(int channel, CellSpec cell) {
        bench.putOn(channel, cell);
    }

    /** Takes the cell off, and a load that was put on by hand. */
    public void takeOff(int channel) {
        bench.takeOff(channel);
    }

    /** Takes the cell, as it is, from one channel to a free one. */
    public void move(int from, int to) {
        bench.move(from, to);
    }

    /** Changes what is on two channels, with bonds and all; either may be empty. */
    public void swap(int a, int b) {
        bench.swap(a, b);
    }

    /** Puts a load on by hand, or takes it off; on a string's first channel, the string's. */
    public void handLoad(int channel, boolean on) {
        bench.handLoad(channel, on);
    }

    /** Bonds the leads together at the cell, 10 milliohms. */
    public void bond(int channel) {
        bench.bond(channel, true);
    }

    /** Parts the bond and takes insulation off. */
    public void part(int channel) {
        bench.bond(channel, false);
    }

    /** Insulates the leads, bonded or not; changes nothing that a sensor sees. */
    public void insulate(int channel) {
        bench.requireOccupant(channel).insulated = true;
    }

    /** Puts the cell, with its sensor and leads, into the watch container, or takes it out again. */
    public void contain(int channel, boolean inside) {
        bench.requireOccupant(channel).contained = inside;
    }

    /** Holds a channel's sensor, where it sits on the cell, between two fingers for so many seconds of event time. */
    public void hold(int channel, double seconds) {
        bench.requireChannel(channel).thermistor.hold(seconds);
    }

    /** Lets one more thing go wrong; a trigger other than the start counts from now on. */
    public void addFault(Fault fault) {
        if (fault.channel() != Fault.BOARD) {
            bench.requireChannel(fault.channel());
        }
        faults.add(fault);
    }

    /** What is really the case on a channel. Not for every step: the rest to come is stepped through. */
    public CellTruth truth(int channel) {
        bench.requireChannel(channel);
        List<FaultKind> active = new ArrayList<>();
        faults.standing(channel).forEach(fault -> active.add(fault.kind()));
        active.addAll(boardFaults());
        return bench.truth(channel, electronics.isBlinking(channel), active);
    }

    /** What the last scan said of a channel, in counts; what the wire does to it is not in it. */
    public Reading reading(int channel) {
        Channel read = bench.requireChannel(channel);
        boolean amperes = spec.measuresAmperes();
        return new Reading(
                read.state(amperes), read.input.counts(), read.thermistor.counts(), amperes ? read.amperesCounts() : 0);
    }

    /** What is really the case on a channel, as far as it costs nothing to say: for every step. */
    public Glance glance(int channel) {
        return bench.glance(channel);
    }

    /** The faults that befall the whole board now. */
    public List<FaultKind> boardFaults() {
        return faults.standing(Fault.BOARD).stream().map(Fault::kind).toList();
    }

    /** Temperature of the room with the sun in it, degrees Celsius. */
    public double ambientCelsius() {
        return bench.surroundings().airCelsius();
    }

    /** Whether the buzzer sounds. */
    public boolean isBuzzing() {
        return electronics.isBuzzing();
    }

    /** Whether every load was opened because the host was not heard, and it has not been heard since. */
    public boolean isHostLost() {
        return electronics.isHostLost();
    }

    /** Whether the board is scripted to be silent or off just now. */
    public boolean isSilent() {
        return electronics.isDeaf();
    }

    /** What the board says about itself now. */
    public Identity identity() {
        return electronics.identity();
    }

    /** Number of the last scan since power-on, 0 before the first. */
    public long lastScan() {
        return electronics.lastScan();
    }

    public BoardSpec spec() {
        return spec;
    }
}
