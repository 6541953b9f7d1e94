package org.ebbwatch.sim.fault;

import java.util.Map;
import java.util.Objects;

/**
 * One thing that goes wrong.
 *
 * @param kind what
 * @param channel on which channel, 0-based; {@link #BOARD} where the kind befalls the board
 * @param trigger when it begins
 * @param lastsMillis event time until it ends; {@link #FOR_EVER}
 * @param strengths parameters of the kind by name; those not named have their usual strength
 */
public record Fault(FaultKind kind, int channel, Trigger trigger, long lastsMillis, Map<String, Double> strengths) {
    /** The channel of a fault that befalls the board. */
    public static final int BOARD = -1;
    /** A fault that does not end. */
    public static final long FOR_EVER = Long.MAX_VALUE;

    public Fault {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(trigger, "trigger");
        strengths = Map.copyOf(strengths);
        if ((kind.scope() == FaultKind.Scope.BOARD) != (channel == BOARD)) {
            throw new IllegalArgumentException(kind.scenarioName()
                    + (channel == BOARD ? " needs a channel" : " befalls the whole board and takes no channel"));
        }
        if (channel < BOARD) {
            throw new IllegalArgumentException("channel is " + channel + ", allowed is 0 or more");
        }
        if (lastsMillis <= 0) {
            throw new IllegalArgumentException("a fault lasts " + lastsMillis + " ms, allowed is above 0");
        }
        strengths.forEach((name, strength) -> requireAllowed(kind, name, strength));
    }

    private static void requireAllowed(FaultKind kind, String name, double strength) {
        FaultParameter parameter = kind.parameter(name)
                .orElseThrow(() -> new IllegalArgumentException(kind.scenarioName() + " has no parameter " + name));
        if (!(strength >= parameter.lowest() && strength <= parameter.highest())) {
            throw new IllegalArgumentException(
                    name + " is " + strength + ", allowed is " + parameter.lowest() + " to " + parameter.highest());
        }
    }

    /** A fault of usual strength on a channel that does not end. */
    public static Fault on(int channel, FaultKind kind, Trigger trigger) {
        return new Fault(kind, channel, trigger, FOR_EVER, Map.of());
    }

    /** A fault of usual strength that befalls the board and does not end. */
    public static Fault onBoard(FaultKind kind, Trigger trigger) {
        return new Fault(kind, BOARD, trigger, FOR_EVER, Map.of());
    }

    /** The same for so long. */
    public Fault lasting(long millis) {
        return new Fault(kind, channel, trigger, millis, strengths);
    }

    /** The same with these strengths. */
    public Fault with(Map<String, Double> newStrengths) {
        return new Fault(kind, channel, trigger, lastsMillis, newStrengths);
    }

    /** How strong, by the name of a parameter of the kind. */
    public double strength(String parameter) {
        Double given = strengths.get(parameter);
        return given != null ? given : kind.parameter(parameter).orElseThrow().usual();
    }
}
