package org.ebbwatch.alarm;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.ebbwatch.alarm.outlet.Outlet;
import org.ebbwatch.alarm.outlet.OutletMessage;

/** A receiver that outlives the service: it can be away, or take a message and lose its answer. */
final class ForgetfulReceiver implements Outlet {
    private final String name;
    private final List<OutletMessage> received = new ArrayList<>();
    private Manners manners = Manners.WELL;

    enum Manners {
        WELL,
        AWAY,
        /** Takes the message; that it did is never heard. */
        ANSWER_LOST
    }

    ForgetfulReceiver(String name) {
        this.name = name;
    }

    void becomes(Manners now) {
        manners = now;
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public Delivery deliver(OutletMessage message) {
        if (manners == Manners.AWAY) {
            return new NotTaken("away");
        }
        received.add(message);
        return manners == Manners.WELL ? new Taken() : new NotTaken("the answer was lost");
    }

    /** Everything that came, repetitions too. */
    List<OutletMessage> received() {
        return received;
    }

    /** The numbers of the messages, each where it came first; repetitions are told by their id. */
    List<Long> inOrder() {
        Map<UUID, Long> first = new LinkedHashMap<>();
        received.forEach(message -> first.putIfAbsent(message.id(), message.number()));
        return List.copyOf(first.values());
    }
}
