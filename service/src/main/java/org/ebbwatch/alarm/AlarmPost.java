package org.ebbwatch.alarm;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import org.ebbwatch.alarm.book.Alarm;
import org.ebbwatch.alarm.book.AlarmEvent;
import org.ebbwatch.alarm.book.Moment;
import org.ebbwatch.alarm.book.Route;
import org.ebbwatch.alarm.book.Routing;
import org.ebbwatch.alarm.book.Telling;
import org.ebbwatch.alarm.outlet.Outbox;
import org.ebbwatch.alarm.outlet.OutletMessage;
import org.ebbwatch.alarm.outlet.OutletView;
import org.ebbwatch.store.AlarmTable;
import org.ebbwatch.store.OutboxRow;
import org.ebbwatch.store.WallLabel;

/**
 * Makes messages of what outlets are to be told, writes them down, and hands them over once that has lasted. Not thread-safe: all
 * calls are made under the rack's lock.
 */
final class AlarmPost {
    private final AlarmTable table;
    private final Map<String, Outbox> outboxes = new LinkedHashMap<>();
    private final Routing routing;
    private final AlarmLinks links;
    private final Supplier<UUID> ids;
    private final Map<Outbox, List<OutletMessage>> unsent = new LinkedHashMap<>();
    private long number;

    /**
     * A post.
     *
     * @param outboxes the ways out and of what they are told, in the order in which they are
     * @param ids gives time-ordered identifiers
     */
    AlarmPost(AlarmTable table, Map<Outbox, Route> outboxes, AlarmLinks links, Supplier<UUID> ids) {
        this.table = table;
        this.links = links;
        this.ids = ids;
        Map<String, Route> routes = new LinkedHashMap<>();
        outboxes.forEach((outbox, route) -> {
            this.outboxes.put(outbox.name(), outbox);
            routes.put(outbox.name(), route);
        });
        this.routing = new Routing(routes);
    }

    /**
     * Hands over what an earlier run could not, and recalls who was told of what.
     *
     * @throws org.ebbwatch.store.StorageException if that cannot be read
     */
    void resume(List<Alarm> living, Moment now) {
        number = table.lastNumber();
        outboxes.values().forEach(outbox -> table.unsent(outbox.name()).forEach(row -> outbox.put(message(row))));
        routing.resume(living, table.told(), now);
    }

    private static OutletMessage message(OutboxRow row) {
        return new OutletMessage(row.id(), row.number(), row.rings(), row.body(), AlarmMessage.fields(row.body()));
    }

    /** Writes down what outlets are told of a step. */
    void tell(AlarmEvent event, WallLabel wall) {
        routing.of(event).forEach(telling -> write(telling, wall));
    }

    /** Writes down what outlets are told only now; about once a second. */
    void tellLate(List<Alarm> living, Moment now, WallLabel wall) {
        routing.late(living, now).forEach(telling -> write(telling, wall));
    }

    /** Writes down a notice for those of these outlets that there are. */
    void tell(RackNotice notice, Set<String> outlets, WallLabel wall) {
        for (String outlet : outboxes.keySet()) {
            if (outlets.contains(outlet)) {
                UUID id = ids.get();
                number++;
                String body = AlarmMessage.text(notice, id, number, wall.millis());
                write(new OutboxRow(number, id, null, outlet, false, body, wall));
            }
        }
    }

    private void write(Telling telling, WallLabel wall) {
        UUID id = ids.get();
        number++;
        String body = AlarmMessage.text(telling, id, number, links.of(telling).orElse(""));
        write(new OutboxRow(number, id, telling.alarm().id(), telling.outlet(), telling.rings(), body, wall));
    }

    private void write(OutboxRow row) {
        table.append(row);
        unsent.computeIfAbsent(outboxes.get(row.outlet()), none -> new ArrayList<>())
                .add(message(row));
    }

    /** Hands over what is written down. */
    void committed() {
        unsent.forEach((outbox, messages) -> messages.forEach(outbox::put));
        unsent.clear();
    }

    List<OutletView> views() {
        return outboxes.values().stream().map(Outbox::view).toList();
    }
}
