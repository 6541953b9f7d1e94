package org.ebbwatch.alarm;

import com.github.f4b6a3.uuid.UuidCreator;
import io.micronaut.json.JsonMapper;
import io.micronaut.json.tree.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.net.URI;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToLongFunction;
import org.ebbwatch.acquire.RackLock;
import org.ebbwatch.alarm.book.AlarmAnswer;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmStep;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.alarm.book.Route;
import org.ebbwatch.alarm.outlet.Outbox;
import org.ebbwatch.alarm.outlet.Outlet;
import org.ebbwatch.alarm.outlet.OutletMessage;
import org.ebbwatch.passage.Happenings;
import org.ebbwatch.passage.PassageStanding;
import org.ebbwatch.passage.RackStorage;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.store.AlarmTable;

/** A desk over records on disk, with one outlet that can be away, and storage that can be away. */
final class DeskBench implements AutoCloseable {
    final HandClock clock;
    final List<OutletMessage> delivered = new ArrayList<>();
    final AlarmDesk desk;
    final AlarmTable table;
    final StoredRack rack;
    final Happenings happenings = new Happenings(0);
    final AlarmClerk clerk;
    boolean outletAway;
    boolean storageAway;
    final AlarmLinkDesk links;
    private final List<Outbox> outboxes = new ArrayList<>();
    private long eventMillis = Standings.EVENT_MILLIS;

    DeskBench(Path directory, HandClock clock) {
        this(directory, clock, Map.of());
    }

    /** With other ways out than the one that is here. */
    DeskBench(Path directory, HandClock clock, Map<? extends Outlet, Route> ways) {
        this.clock = clock;
        this.rack = StoredRack.open(directory);
        this.table = rack.alarms();
        Map<? extends Outlet, Route> all = ways.isEmpty() ? Map.of(new Receiver(), Route.ALL) : ways;
        Map<Outbox, Route> routes = new LinkedHashMap<>();
        all.forEach(
                (way, route) -> routes.put(new Outbox(way, (message, wall) -> table.sent(message.id(), wall)), route));
        outboxes.addAll(routes.keySet());
        var signed = new AcknowledgeLinks(URI.create("https://rack.example"), new byte[32]);
        this.desk = new AlarmDesk(
                NightHours.usual(ZoneOffset.UTC),
                detachable(),
                routes,
                signed,
                UuidCreator::getTimeOrderedEpoch,
                clock,
                happenings);
        this.clerk = new AlarmClerk(desk, detachable());
        this.links = new AlarmLinkClerk(desk, clerk, signed, clock, new RackLock());
    }

    /** What happens at one moment of the rack: told, committed, told of the commit. */
    void changed(PassageStanding... passages) {
        desk.changed(List.of(passages));
        commit();
    }

    void commit() {
        if (!storageAway) {
            rack.commit();
        }
        desk.committed();
    }

    /** Time passes for host and board. */
    void pass(long millis) {
        clock.pass(millis);
        eventMillis += millis;
        ToLongFunction<String> times = board -> eventMillis;
        desk.tick(times);
        commit();
    }

    /** Lets the outlets deliver what they can. */
    void deliver() {
        try {
            for (Outbox outbox : outboxes) {
                while (outbox.attempt(clock.now()) == 0) {
                    // The next one.
                }
            }
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    AlarmAnswer acknowledge(AlarmKind kind, String who) {
        return ask(kind, AlarmStep.ACKNOWLEDGED, who, "", 0);
    }

    AlarmAnswer ask(AlarmKind kind, AlarmStep step, String who, String reason, int minutes) {
        return desk.ask(request(kind, step, who, reason, minutes), event -> {});
    }

    /** A request about an alarm as it is now. */
    AlarmRequest request(AlarmKind kind, AlarmStep step, String who, String reason, int minutes) {
        AlarmView seen = alarm(kind);
        return new AlarmRequest(seen.id(), seen.sequence(), step, who, reason, minutes);
    }

    AlarmView alarm(AlarmKind kind) {
        return desk.view().alarms().stream()
                .filter(alarm -> alarm.kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    static JsonNode json(OutletMessage message) {
        try {
            return JsonMapper.createDefault().readValue(message.body(), JsonNode.class);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    List<String> told() {
        return delivered.stream()
                .map(DeskBench::json)
                .map(body -> body.get("step").getStringValue()
                        + ' '
                        + body.get("kind").getStringValue())
                .toList();
    }

    @Override
    public void close() {
        rack.close();
    }

    private RackStorage detachable() {
        return (RackStorage) Proxy.newProxyInstance(
                getClass().getClassLoader(), new Class<?>[] {RackStorage.class}, (proxy, method, arguments) -> {
                    if (storageAway && method.getName().equals("trouble")) {
                        return Optional.of("disk full");
                    }
                    if (storageAway && method.getName().equals("commit")) {
                        return null;
                    }
                    try {
                        return method.invoke(rack, arguments);
                    } catch (InvocationTargetException e) {
                        throw e.getCause();
                    }
                });
    }

    private final class Receiver implements Outlet {
        @Override
        public String name() {
            return "test";
        }

        @Override
        public Delivery deliver(OutletMessage message) {
            if (outletAway) {
                return new NotTaken("away");
            }
            delivered.add(message);
            return new Taken();
        }
    }
}
