package org.ebbwatch.sim.fault;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** What can go wrong, what it befalls and how strong it can be. */
public enum FaultKind {
    /** The cell's protection board opens: terminals near 0 V, no current; only charging closes it again. */
    PROTECTION_CUT_OFF(Scope.CHANNEL),
    /** The channel's leads fall off the cell. The input floats unless a resistor lies across it. */
    OPEN_LEAD(
            Scope.CHANNEL,
            new FaultParameter("resistorAcross", 0, 0, 1, "1: a resistor stays across the channel's input"),
            new FaultParameter("floatVolts", 0.25, -0.5, 5, "about where the open input drifts")),
    /** The sense lead alone falls off: the input floats, the load goes on draining. */
    OPEN_SENSE(Scope.CHANNEL, new FaultParameter("floatVolts", 0.25, -0.5, 5, "about where the open input drifts")),
    /** The load's resistor opens while the switch says applied. */
    LOAD_LOST(Scope.CHANNEL),
    /** The load conducts while the switch says open. */
    LOAD_STUCK(Scope.CHANNEL),
    /** The load's resistance is not the one it should be. */
    WRONG_LOAD(Scope.CHANNEL, new FaultParameter("factor", 100, 0.01, 1e6, "times the nominal resistance")),
    /** A source leaks into the cell and keeps its voltage up. */
    CHARGER_LEAK(
            Scope.CHANNEL,
            new FaultParameter("volts", 2.4, 0, 5, "of the source"),
            new FaultParameter("ohms", 1, 0.01, 1e6, "of the source")),
    /** The thermistor falls off the cell and reads the air around it. */
    THERMISTOR_OFF(
            Scope.CHANNEL, new FaultParameter("tauSeconds", 12, 0.1, 3600, "time constant of the bare thermistor")),
    /** The thermistor opens: "very cold", unless the board notices. */
    THERMISTOR_OPEN(Scope.CHANNEL, new FaultParameter("flagged", 1, 0, 1, "1: the board says open sensor")),
    /** The temperature reading no longer changes. */
    FROZEN_CELSIUS(Scope.CHANNEL),
    /** The temperature reading is finite and absurd. */
    ABSURD_CELSIUS(
            Scope.CHANNEL,
            new FaultParameter("celsius", 3.4e38, -3.5e38, 3.5e38, "what is read, as far as counts reach")),
    /** The voltage reading no longer changes. */
    FROZEN_VOLTS(Scope.CHANNEL),
    /** The voltage reading is finite and absurd. */
    ABSURD_VOLTS(
            Scope.CHANNEL,
            new FaultParameter("volts", 3.4e38, -3.5e38, 3.5e38, "what is read, as far as counts reach")),
    /** Something in the cell makes heat. */
    WARMING(
            Scope.CHANNEL,
            new FaultParameter("watts", 0.4, 0.001, 1000, "heat in the end"),
            new FaultParameter("riseMinutes", 30, 0, 10_000, "time until then")),
    /** Heat that doubles and doubles, whatever the charge, until its energy is spent. */
    RUNAWAY(
            Scope.CHANNEL,
            new FaultParameter("watts", 1, 0.01, 1000, "heat at the beginning"),
            new FaultParameter("doublingSeconds", 20, 1, 10_000, "time in which it doubles"),
            new FaultParameter("mostWatts", 1500, 1, 100_000, "where it stops growing"),
            new FaultParameter("kilojoules", 25, 0.1, 10_000, "energy in all")),
    /** An internal short develops. */
    INTERNAL_SHORT(
            Scope.CHANNEL,
            new FaultParameter("fromOhms", 1000, 0.001, 1e6, "resistance at the beginning"),
            new FaultParameter("toOhms", 10, 0.001, 1e6, "resistance in the end"),
            new FaultParameter("overHours", 1, 0, 1000, "time until then")),
    /** The bond across the leads comes loose. */
    LOOSE_TIE(Scope.CHANNEL, new FaultParameter("ohms", 1e9, 0.01, 1e9, "what is left of the bond")),
    /** The cell is put back the wrong way round. */
    REVERSED(Scope.CHANNEL),
    /** The cell and that of another channel change places. */
    SWAPPED(Scope.CHANNEL, new FaultParameter("with", 0, 0, 63, "the other channel, 0-based")),
    /** The resistor bank's cooling fails. */
    HOT_BANK(Scope.BOARD, new FaultParameter("factor", 5, 1, 1000, "times its thermal resistance")),
    /** Nothing comes from the board and nothing reaches it; it goes on scanning. */
    SILENT(Scope.BOARD),
    /** Bytes to the host are corrupted. */
    CORRUPT_BYTES(Scope.BOARD, new FaultParameter("perMillion", 1000, 0, 1e6, "bytes of a million")),
    /** Bytes to the host are lost. */
    DROPPED_BYTES(Scope.BOARD, new FaultParameter("perMillion", 1000, 0, 1e6, "bytes of a million")),
    /** The room warms up. */
    AMBIENT_RISE(
            Scope.BOARD,
            new FaultParameter("kelvin", 15, -50, 50, "in the end"),
            new FaultParameter("tauMinutes", 60, 0.1, 10_000, "time constant")),
    /** The sun falls on cells, sensors and container. */
    SUN(
            Scope.BOARD,
            new FaultParameter("kelvin", 12, 0, 60, "in the end"),
            new FaultParameter("tauMinutes", 10, 0.1, 10_000, "time constant")),
    /** The board's clock runs wrong. */
    ODD_CLOCK(Scope.BOARD, new FaultParameter("percent", 2, -50, 50, "fast, or slow below 0")),
    /** The board starts again: loads open, scans from 1, boot number one more; silent for the fault's duration. */
    REBOOT(Scope.BOARD),
    /** A contact input closes. */
    CONTACT(Scope.BOARD, new FaultParameter("input", 0, 0, 7, "which, 0-based"));

    /** What a fault befalls. */
    public enum Scope {
        /** One channel. */
        CHANNEL,
        /** The whole board. */
        BOARD
    }

    private final Scope scope;

    @SuppressWarnings("ImmutableEnumChecker") // List.of is
    private final List<FaultParameter> parameters;

    FaultKind(Scope scope, FaultParameter... parameters) {
        this.scope = scope;
        this.parameters = List.of(parameters);
    }

    public Scope scope() {
        return scope;
    }

    public List<FaultParameter> parameters() {
        return parameters;
    }

    /** The parameter of that name. */
    public Optional<FaultParameter> parameter(String name) {
        return parameters.stream()
                .filter(parameter -> parameter.name().equals(name))
                .findFirst();
    }

    /** As a scenario writes it: {@code openLead} for {@link #OPEN_LEAD}. */
    public String scenarioName() {
        StringBuilder camel = new StringBuilder();
        for (char letter : name().toCharArray()) {
            boolean begins = camel.length() > 0 && camel.charAt(camel.length() - 1) == '_';
            if (begins) {
                camel.setLength(camel.length() - 1);
            }
            camel.append(begins || letter == '_' ? letter : Character.toLowerCase(letter));
        }
        return camel.toString();
    }

    /** The kind a scenario means. */
    public static Optional<FaultKind> named(String scenarioName) {
        return Stream.of(values())
                .filter(kind -> kind.scenarioName().equals(scenarioName))
                .findFirst();
    }
}
