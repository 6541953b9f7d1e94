package org.ebbwatch.alarm.book;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/** A book, outlets with their routes, and all that they were told. */
final class RoutingBench {
    final BookBench bench = new BookBench();
    final List<Telling> tellings = new ArrayList<>();
    private final Map<String, Route> routes = new LinkedHashMap<>();
    private Routing routing = new Routing(Map.of());
    private long originMillis;

    RoutingBench with(String outlet, Route route) {
        routes.put(outlet, route);
        routing = new Routing(routes);
        return this;
    }

    void report(Report... reports) {
        follow(bench.report(reports));
    }

    void pass(long millis) {
        follow(bench.pass(millis));
    }

    void acknowledge(AlarmKind kind) {
        acknowledge(bench.of(kind));
    }

    void acknowledge(Alarm alarm) {
        follow(List.of(bench.done(bench.book.acknowledge(alarm.id(), BookBench.ANNA, bench.now()))));
    }

    void follow(List<AlarmEvent> events) {
        events.forEach(event -> tellings.addAll(routing.of(seen(event))));
        tellings.addAll(routing.late(bench.book.alive(), seen(bench.now())));
    }

    /** The steady clock of each run has its own origin; the book, which goes on, knows only the first. */
    private Moment seen(Moment moment) {
        return new Moment(moment.wallMillis(), moment.monotonicMillis() - originMillis);
    }

    private AlarmEvent seen(AlarmEvent event) {
        return new AlarmEvent(
                event.alarm(),
                event.step(),
                event.before(),
                event.who(),
                event.reason(),
                seen(event.at()),
                event.sent(),
                event.rings());
    }

    /** Another run, which knows the alarms that are alive and who was told of them, and nothing else; time goes on. */
    void restart(long millis) {
        Map<UUID, Set<String>> told = new HashMap<>();
        List<Alarm> living = bench.book.alive();
        Set<UUID> ids = living.stream().map(Alarm::id).collect(Collectors.toSet());
        tellings.stream().filter(telling -> ids.contains(telling.alarm().id())).forEach(telling -> told.computeIfAbsent(
                        telling.alarm().id(), none -> new HashSet<>())
                .add(telling.outlet()));
        bench.wallMillis += millis;
        originMillis = bench.monotonicMillis - 1_000;
        routing = new Routing(routes);
        routing.resume(living, told, seen(bench.now()));
    }

    List<String> told() {
        return tellings.stream()
                .map(telling -> telling.outlet()
                        + ' '
                        + telling.what()
                        + ' '
                        + telling.alarm().kind())
                .toList();
    }
}
