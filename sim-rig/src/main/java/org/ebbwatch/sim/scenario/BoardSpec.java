package org.ebbwatch.sim.scenario;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;

/**
 * One simulated board and all that hangs on it.
 *
 * @param serialNumber 1 to 32 characters of printable ASCII
 * @param firmware 0 to 32 characters of printable ASCII
 * @param bootNumber boot number of its first start, 1 to 4294967295
 * @param converter how it measures
 * @param measuresAmperes every cell channel has a shunt
 * @param checksLeads every cell channel has a lead check, but those whose load is put on by hand
 * @param buzzer it has one
 * @param loadRelay it has one relay that opens every load
 * @param contactInputs how many, 0 to 8
 * @param hostTimeoutMillis event time without the host after which it opens every load, 0: never; an accelerated board waits
 *     at least 2 s of host time
 * @param ambient the room
 * @param channels in order, 1 to 64: cells first, then what else it measures
 * @param strings cells in series
 * @param faults what goes wrong
 */
public record BoardSpec(
        String serialNumber,
        String firmware,
        long bootNumber,
        ConverterSpec converter,
        boolean measuresAmperes,
        boolean checksLeads,
        boolean buzzer,
        boolean loadRelay,
        int contactInputs,
        long hostTimeoutMillis,
        AmbientSpec ambient,
        List<ChannelSpec> channels,
        List<StringSpec> strings,
        List<Fault> faults) {
    /** Most channels of a board. */
    public static final int CHANNELS_MOST = 64;

    public BoardSpec {
        requirePrintable("serialNumber", serialNumber, 1);
        requirePrintable("firmware", firmware, 0);
        Objects.requireNonNull(converter, "converter");
        Objects.requireNonNull(ambient, "ambient");
        channels = List.copyOf(channels);
        strings = List.copyOf(strings);
        faults = List.copyOf(faults);
        Ranges.within("bootNumber", bootNumber, 1, 0xFFFF_FFFFL);
        Ranges.within("contactInputs", contactInputs, 0, 8);
        Ranges.within("hostTimeoutMillis", hostTimeoutMillis, 0, 0xFFFF_FFFFL);
        Ranges.within("number of channels", channels.size(), 1, CHANNELS_MOST);
        for (StringSpec string : strings) {
            requireFits(string, channels, strings);
        }
        for (Fault fault : faults) {
            requireFits(fault, channels, contactInputs);
        }
    }

    private static void requirePrintable(String name, String text, int shortest) {
        Ranges.within("length of " + name, text.length(), shortest, 32);
        if (!text.chars().allMatch(letter -> letter >= 0x20 && letter <= 0x7E)) {
            throw new IllegalArgumentException(name + " holds a character that is not printable ASCII");
        }
    }

    private static void requireFits(StringSpec string, List<ChannelSpec> channels, List<StringSpec> strings) {
        for (int i = 0; i < string.cells(); i++) {
            int channel = string.firstChannel() + i;
            if (channel >= channels.size() || channels.get(channel).role() != ChannelRole.CELL) {
                throw new IllegalArgumentException(
                        "a string reaches over channel " + channel + ", which is no cell channel");
            }
            if (channels.get(channel).loadOhms() > 0) {
                throw new IllegalArgumentException(
                        "channel " + channel + " belongs to a string and may have no load of its own");
            }
            if (strings.stream().filter(other -> other.contains(channel)).count() > 1) {
                throw new IllegalArgumentException("channel " + channel + " belongs to two strings");
            }
        }
    }

    private static void requireFits(Fault fault, List<ChannelSpec> channels, int contactInputs) {
        if (fault.channel() >= channels.size()) {
            throw new IllegalArgumentException(fault.kind().scenarioName() + " is on channel " + fault.channel()
                    + ", allowed is 0 to " + (channels.size() - 1));
        }
        if (fault.kind() == FaultKind.SWAPPED && fault.strength("with") >= channels.size()) {
            throw new IllegalArgumentException(
                    "swapped is with channel " + (int) fault.strength("with") + ", which the board does not have");
        }
        if (fault.kind() == FaultKind.CONTACT && fault.strength("input") >= contactInputs) {
            throw new IllegalArgumentException(
                    "contact is on input " + (int) fault.strength("input") + ", but contactInputs is " + contactInputs);
        }
    }

    /** A usual board: these cell channels, then ambient, a dummy cell and a resistor bank; buzzer, relay and lead check. */
    public static Builder build(String serialNumber, List<ChannelSpec> cells) {
        return new Builder(serialNumber, cells);
    }

    /** What differs from a usual board. */
    public static final class Builder {
        private final String serialNumber;
        private final List<ChannelSpec> channels;
        private String firmware = "sim-rig 1";
        private long bootNumber = 1;
        private ConverterSpec converter = ConverterSpec.USUAL;
        private boolean measuresAmperes;
        private boolean checksLeads = true;
        private boolean buzzer = true;
        private boolean loadRelay = true;
        private int contactInputs;
        private long hostTimeoutMillis = 30_000;
        private AmbientSpec ambient = AmbientSpec.USUAL;
        private boolean ambientSensor = true;
        private boolean dummy = true;
        private int watches;
        private boolean bank = true;
        private List<StringSpec> strings = List.of();
        private List<Fault> faults = List.of();

        private Builder(String serialNumber, List<ChannelSpec> cells) {
            this.serialNumber = serialNumber;
            channels = new ArrayList<>(cells);
        }

        public Builder firmware(String text) {
            firmware = text;
            return this;
        }

        public Builder bootNumber(long number) {
            bootNumber = number;
            return this;
        }

        public Builder converter(ConverterSpec spec) {
            converter = spec;
            return this;
        }

        public Builder measuresAmperes(boolean yes) {
            measuresAmperes = yes;
            return this;
        }

        public Builder checksLeads(boolean yes) {
            checksLeads = yes;
            return this;
        }

        public Builder buzzer(boolean yes) {
            buzzer = yes;
            return this;
        }

        public Builder loadRelay(boolean yes) {
            loadRelay = yes;
            return this;
        }

        public Builder contactInputs(int number) {
            contactInputs = number;
            return this;
        }

        public Builder hostTimeoutMillis(long millis) {
            hostTimeoutMillis = millis;
            return this;
        }

        public Builder ambient(AmbientSpec spec) {
            ambient = spec;
            return this;
        }

        /** Which channels follow the cells, in this order: ambient, dummy cell, so many watch thermistors, bank. */
        public Builder thermometers(boolean hasAmbient, boolean hasDummy, int numberOfWatches, boolean hasBank) {
            ambientSensor = hasAmbient;
            dummy = hasDummy;
            watches = numberOfWatches;
            bank = hasBank;
            return this;
        }

        public Builder strings(List<StringSpec> specs) {
            strings = specs;
            return this;
        }

        public Builder faults(List<Fault> list) {
            faults = list;
            return this;
        }

        public BoardSpec done() {
            List<ChannelSpec> all = new ArrayList<>(channels);
            if (ambientSensor) {
                all.add(ChannelSpec.thermometer(ChannelRole.AMBIENT));
            }
            if (dummy) {
                all.add(ChannelSpec.thermometer(ChannelRole.DUMMY));
            }
            for (int i = 0; i < watches; i++) {
                all.add(ChannelSpec.thermometer(ChannelRole.WATCH));
            }
            if (bank) {
                all.add(ChannelSpec.thermometer(ChannelRole.BANK));
            }
            return new BoardSpec(
                    serialNumber,
                    firmware,
                    bootNumber,
                    converter,
                    measuresAmperes,
                    checksLeads,
                    buzzer,
                    loadRelay,
                    contactInputs,
                    hostTimeoutMillis,
                    ambient,
                    all,
                    strings,
                    faults);
        }
    }
}
