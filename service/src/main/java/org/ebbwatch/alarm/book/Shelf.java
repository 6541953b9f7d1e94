package org.ebbwatch.alarm.book;

import java.util.HashMap;
import java.util.Map;
import java.util.OptionalLong;
import java.util.UUID;
import org.ebbwatch.alarm.book.Alarm.PutAway;

/** When shelvings end: by the host's steady clock or by its wall clock, whichever is over first. */
final class Shelf {
    private final Map<UUID, Long> ends = new HashMap<>();

    void put(UUID alarm, long endMonotonicMillis) {
        ends.put(alarm, endMonotonicMillis);
    }

    /** A wall clock that went back says nothing about how long an alarm has been shelved: then the shelving ends now. */
    void takeUp(UUID alarm, PutAway putAway, Moment now) {
        putAway.untilWallMillis().ifPresent(until -> {
            boolean wentBack = now.wallMillis() < putAway.sinceWallMillis();
            long left = wentBack ? 0 : until - now.wallMillis();
            ends.put(alarm, now.monotonicMillis() + left);
        });
    }

    void remove(UUID alarm) {
        ends.remove(alarm);
    }

    /** Whether the time of an alarm on the shelf is over. */
    boolean isOver(Alarm alarm, Moment now) {
        Long end = ends.get(alarm.id());
        return end != null && (now.monotonicMillis() >= end || isPast(alarm, now.wallMillis()));
    }

    private static boolean isPast(Alarm alarm, long wallMillis) {
        OptionalLong until = alarm.putAway().orElseThrow().untilWallMillis();
        return until.isPresent() && wallMillis >= until.getAsLong();
    }
}
