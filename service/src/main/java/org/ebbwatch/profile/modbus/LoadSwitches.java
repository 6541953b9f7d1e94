package org.ebbwatch.profile.modbus;

import java.io.IOException;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import org.ebbwatch.profile.LoadOrder;

/** Switches loads by coils and believes only what it reads back. For one thread. */
final class LoadSwitches {
    private final Exchange exchange;
    private final LoadStates states;
    private final int retries;

    LoadSwitches(Exchange exchange, LoadStates states, int retries) {
        this.exchange = exchange;
        this.states = states;
        this.retries = retries;
    }

    /** Whether the device switches any load. */
    boolean any() {
        return !states.coils().isEmpty();
    }

    /** Carries out an order; the first channel that does not show what was ordered, empty where all do. */
    OptionalInt carryOut(LoadOrder order) throws IOException {
        List<Integer> channels = order.channel() == LoadOrder.EVERY_CHANNEL
                ? List.copyOf(states.coils().keySet())
                : List.of(order.channel());
        OptionalInt failed = OptionalInt.empty();
        for (int channel : channels) {
            boolean shown = set(states.coils().get(channel), order.applied());
            failed = shown || failed.isPresent() ? failed : OptionalInt.of(channel);
        }
        return failed;
    }

    /** Tries to open every load; a unit that does not answer is given up after its first. */
    void openAll() throws IOException {
        Set<Integer> silent = new HashSet<>();
        for (Map.Entry<Integer, LoadCoil> each : states.coils().entrySet()) {
            LoadCoil coil = each.getValue();
            if (!silent.contains(coil.coil().unitId()) && !set(coil, false)) {
                silent.add(coil.coil().unitId());
            }
        }
    }

    private boolean set(LoadCoil load, boolean on) throws IOException {
        if (!(ask(Request.write(load.coil(), on)) instanceof Answer.Data)) {
            return false;
        }
        Span sense = new Span(load.sense(), 1);
        for (int attempt = 0; attempt <= retries; attempt++) {
            if (ask(Request.read(sense)) instanceof Answer.Data data) {
                states.read(sense, data.data());
                if (sense.bit(load.sense(), data.data()) == on) {
                    return true;
                }
            }
        }
        return false;
    }

    private Answer ask(Request request) throws IOException {
        Answer answer = exchange.ask(request);
        for (int again = 0; again < retries && !isFinal(answer); again++) {
            answer = exchange.ask(request);
        }
        return answer;
    }

    private static boolean isFinal(Answer answer) {
        return answer instanceof Answer.Data || answer instanceof Answer.Refused;
    }
}
