package org.ebbwatch.alarm.book;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/**
 * Which outlet is told of which alarm. An outlet that was told of an alarm once is told of every further step of it; one that was
 * not told when the alarm was raised, because of the hour or because it is there for what nobody acknowledges, is told as soon
 * as it is its turn, unless somebody has acknowledged the alarm by then.
 *
 * <p>Time is counted by the steady clock. Over a restart it is counted by the wall clock; if that went back, the time is up.
 * Memory: a few dozen bytes for each living alarm and outlet. Not thread-safe.
 */
public final class Routing {
    private final Map<String, Route> routes;
    private final Map<UUID, Set<String>> told = new HashMap<>();
    private final Map<UUID, Long> unheededSinceMonotonicMillis = new HashMap<>();

    /**
     * Nobody was told of anything yet.
     *
     * @param routes by the names of their outlets, in the order in which they are told
     */
    public Routing(Map<String, Route> routes) {
        this.routes = new LinkedHashMap<>(routes);
    }

    /**
     * Goes on where an earlier run ended.
     *
     * @param living its alarms
     * @param before which outlets were told of which of them
     */
    public void resume(Collection<Alarm> living, Map<UUID, Set<String>> before, Moment now) {
        before.forEach((alarm, outlets) -> told.put(alarm, new HashSet<>(outlets)));
        for (Alarm alarm : living) {
            alarm.unheededSinceWallMillis().ifPresent(since -> {
                long elapsed = now.wallMillis() < since ? Long.MAX_VALUE / 2 : now.wallMillis() - since;
                unheededSinceMonotonicMillis.put(alarm.id(), now.monotonicMillis() - elapsed);
            });
        }
    }

    /** Who is told of a step. */
    public List<Telling> of(AlarmEvent event) {
        Alarm alarm = event.alarm();
        if (alarm.unheededSinceWallMillis().isPresent()) {
            unheededSinceMonotonicMillis.putIfAbsent(alarm.id(), event.at().monotonicMillis());
        } else {
            unheededSinceMonotonicMillis.remove(alarm.id());
        }
        List<Telling> tellings = new ArrayList<>();
        if (event.sent()) {
            routes.forEach((outlet, route) -> {
                if (wasTold(alarm, outlet) || begins(event, route)) {
                    tell(alarm, outlet);
                    tellings.add(Telling.of(event, outlet));
                }
            });
        }
        if (!alarm.isAlive()) {
            told.remove(alarm.id());
        }
        return tellings;
    }

    private static boolean begins(AlarmEvent event, Route route) {
        boolean news = event.rings() || event.step() == AlarmStep.TOLD;
        return news
                && route.escalation().isEmpty()
                && route.admits(event.alarm(), event.at().wallMillis());
    }

    /** Who is told only now; to be called about once a second, after the steps of that moment. */
    public List<Telling> late(Collection<Alarm> living, Moment now) {
        List<Telling> tellings = new ArrayList<>();
        for (Alarm alarm : living) {
            routes.forEach((outlet, route) -> {
                if (alarm.isUnheeded()
                        && !wasTold(alarm, outlet)
                        && route.admits(alarm, now.wallMillis())
                        && isTime(alarm, route, now)) {
                    tell(alarm, outlet);
                    String what = route.escalation().isPresent() ? Telling.ESCALATED : AlarmStep.TOLD.name();
                    tellings.add(Telling.late(alarm, outlet, what, now));
                }
            });
        }
        return tellings;
    }

    private boolean isTime(Alarm alarm, Route route, Moment now) {
        long unheeded =
                now.monotonicMillis() - unheededSinceMonotonicMillis.getOrDefault(alarm.id(), now.monotonicMillis());
        return unheeded >= route.escalation().map(Duration::toMillis).orElse(0L);
    }

    private boolean wasTold(Alarm alarm, String outlet) {
        return told.getOrDefault(alarm.id(), Set.of()).contains(outlet);
    }

    private void tell(Alarm alarm, String outlet) {
        told.computeIfAbsent(alarm.id(), none -> new HashSet<>()).add(outlet);
    }
}
