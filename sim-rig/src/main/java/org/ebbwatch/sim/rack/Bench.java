package org.ebbwatch.sim.rack;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.sim.cell.Cell;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Happening;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.StringSpec;

/** What stands on the table: channels with their cells and loads, strings, the room. Knows nothing of the board's memory. */
final class Bench {
    /** Hears of what faults can wait for. */
    interface Listener {
        /** Something happened on a channel, 0-based. */
        void happened(Happening happening, int channel);
    }

    private final long seed;
    private final Listener listener;
    private final Surroundings surroundings;
    private final Channel[] channels;
    private final SeriesString[] strings;
    private double stepSeconds = 1;
    private double containedJoules;
    private double loadJoules;

    Bench(BoardSpec spec, long seed, Listener listener) {
        this.seed = seed;
        this.listener = listener;
        surroundings = new Surroundings(spec.ambient());
        channels = new Channel[spec.channels().size()];
        for (int i = 0; i < channels.length; i++) {
            Randomness errors = Randomness.of(seed, "channel " + i);
            Channel channel =
                    new Channel(i, spec.channels().get(i), spec.converter(), errors, surroundings.airCelsius());
            channels[i] = channel;
            channel.spec.cell().ifPresent(cell -> channel.place(new Occupant(cellOf(cell))));
        }
        strings = new SeriesString[spec.strings().size()];
        for (int i = 0; i < strings.length; i++) {
            strings[i] = string(spec.strings().get(i));
        }
        setStep(stepSeconds);
    }

    private SeriesString string(StringSpec of) {
        List<Channel> members = new ArrayList<>();
        for (int i = 0; i < of.cells(); i++) {
            members.add(channels[of.firstChannel() + i]);
        }
        SeriesString string = new SeriesString(of, members);
        members.forEach(member -> member.string = string);
        return string;
    }

    private Cell cellOf(CellSpec of) {
        Randomness spread = Randomness.of(seed, "cell " + of.tag());
        double capacity = Math.max(0.3, 1 + of.spread() * spread.nextNormal());
        double ohms = Math.max(0.3, 1 + of.spread() * spread.nextNormal());
        Cell cell = new Cell(of, capacity, ohms, surroundings.airCelsius());
        cell.setStep(stepSeconds);
        return cell;
    }

    void setStep(double seconds) {
        stepSeconds = seconds;
        surroundings.setStep(seconds);
        for (Channel channel : channels) {
            channel.setStep(seconds);
        }
    }

    /** Moves everything on by one step that ends at this event time. */
    void step(double eventSeconds) {
        surroundings.step(eventSeconds, containedJoules / stepSeconds, loadJoules / stepSeconds);
        containedJoules = 0;
        loadJoules = 0;
        for (SeriesString string : strings) {
            string.settle();
            loadJoules += string.loadJoules(stepSeconds);
        }
        for (Channel channel : channels) {
            step(channel);
            loadJoules += channel.loadJoules();
        }
    }

    private void step(Channel channel) {
        boolean boxed = channel.isInContainer();
        double air = boxed ? surroundings.containerCelsius() : surroundings.airCelsius();
        if (channel.occupant != null) {
            Cell cell = channel.occupant.cell;
            if (channel.string == null) {
                channel.begin();
                channel.settle(0);
            }
            double lost = cell.lostJoules();
            channel.finish(air);
            if (boxed) {
                containedJoules += cell.lostJoules() - lost;
            }
        }
        double own =
                switch (channel.spec.role()) {
                    case BANK -> surroundings.bankCelsius();
                    case DUMMY -> surroundings.dummyCelsius();
                    default -> air;
                };
        channel.stepSensors(air, own);
    }

    Surroundings surroundings() {
        return surroundings;
    }

    int size() {
        return channels.length;
    }

    Channel channel(int number) {
        return channels[number];
    }

    void putOn(int channel, CellSpec cell) {
        requireFree(channel).place(new Occupant(cellOf(cell)));
    }

    void takeOff(int channel) {
        requireOccupant(channel);
        channels[channel].place(null);
        channels[channel].handClosed = false;
    }

    void move(int from, int to) {
        Occupant occupant = requireOccupant(from);
        requireFree(to);
        takeOff(from);
        channels[to].place(occupant);
    }

    void swap(int a, int b) {
        Channel one = requireHolder(a);
        Channel other = requireHolder(b);
        Occupant kept = one.occupant;
        one.place(other.occupant);
        other.place(kept);
    }

    void handLoad(int channel, boolean on) {
        Channel holder = requireHolder(channel);
        if (holder.handClosed != on) {
            holder.handClosed = on;
            listener.happened(on ? Happening.LOAD_CLOSED : Happening.LOAD_OPENED, channel);
        }
    }

    void switchLoad(int channel, boolean closed) {
        if (channels[channel].switchClosed != closed) {
            channels[channel].switchClosed = closed;
            listener.happened(closed ? Happening.LOAD_CLOSED : Happening.LOAD_OPENED, channel);
        }
    }

    void openAllSwitches() {
        for (Channel channel : channels) {
            switchLoad(channel.number, false);
        }
    }

    void bond(int channel, boolean bonded) {
        Occupant occupant = requireOccupant(channel);
        occupant.bonded = bonded;
        occupant.insulated &= bonded;
        listener.happened(bonded ? Happening.BONDED : Happening.PARTED, channel);
    }

    Channel requireChannel(int channel) {
        if (channel < 0 || channel >= channels.length) {
            throw new IllegalArgumentException("channel is " + channel + ", allowed is 0 to " + (channels.length - 1));
        }
        return channels[channel];
    }

    Occupant requireOccupant(int channel) {
        Occupant occupant = requireChannel(channel).occupant;
        if (occupant == null) {
            throw new IllegalArgumentException("channel " + channel + " holds no cell");
        }
        return occupant;
    }

    private Channel requireHolder(int channel) {
        Channel holder = requireChannel(channel);
        ChannelRole role = holder.spec.role();
        if (role != ChannelRole.CELL && role != ChannelRole.WATCH) {
            throw new IllegalArgumentException("channel " + channel + " of role " + role + " holds no cell");
        }
        return holder;
    }

    private Channel requireFree(int channel) {
        Channel holder = requireHolder(channel);
        if (holder.occupant != null) {
            throw new IllegalArgumentException("channel " + channel + " already holds a cell");
        }
        return holder;
    }

    /** The truth of a channel that is at hand. */
    Glance glance(int number) {
        Channel channel = requireChannel(number);
        Occupant occupant = channel.occupant;
        boolean loaded = channel.string == null ? channel.loadConducts() : channel.string.isClosed();
        if (occupant == null) {
            return new Glance(0, Double.NaN, channel.thermistor.celsius(), 0, loaded, false, false, false);
        }
        return new Glance(
                channel.externalVolts(),
                occupant.cell.celsius(),
                channel.thermistor.celsius(),
                occupant.cell.amperes(),
                loaded,
                occupant.bonded && !channel.effects.tieLoose,
                !channel.effects.leadOpen && !channel.effects.senseOpen,
                occupant.tripped);
    }

    /** The truth of a channel. */
    CellTruth truth(int number, boolean blinking, List<FaultKind> active) {
        Channel channel = requireChannel(number);
        Occupant occupant = channel.occupant;
        if (occupant == null) {
            double none = Double.NaN;
            boolean no = false;
            return new CellTruth(
                    "", none, none, none, none, 0, 0, channel.loadConducts(), no, no, no, no, no, blinking, active);
        }
        Cell cell = occupant.cell;
        return new CellTruth(
                cell.spec().tag(),
                cell.openCircuitVolts(),
                cell.restedVolts(24, 1 / channel.effects.shortOhms),
                cell.stateOfCharge(),
                cell.celsius(),
                channel.externalVolts(),
                cell.amperes(),
                channel.string == null ? channel.loadConducts() : channel.string.isClosed(),
                occupant.bonded && !channel.effects.tieLoose,
                occupant.insulated,
                !channel.effects.leadOpen,
                occupant.reversed,
                channel.isInContainer(),
                blinking,
                active);
    }
}
