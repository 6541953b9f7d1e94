package org.ebbwatch.alarm.book;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.ebbwatch.alarm.book.Conditions.Begun;
import org.ebbwatch.judge.FindingKind.Urgency;

/**
 * Keeps single messages back while so many alarms ring that nobody can read them one by one: when more than ten would ring within
 * ten minutes, and until fewer than five want to in as much time (EEMUA 191, from memory). What is kept back is either told
 * together or, once the flood is over, singly after all; nothing is dropped. Forgets everything at a restart, after which what was
 * kept back is told. Memory: a moment for each that rang within the stretch, an id for each kept back.
 */
final class Flood {
    /** So many ring singly within a stretch. */
    static final int SINGLY = 10;
    /** Fewer than so many in a stretch end it. */
    static final int FEW = 5;
    /** Milliseconds of the host. */
    static final long STRETCH_MILLIS = 600_000;

    static final AlarmKey KEY = new AlarmKey(AlarmKind.FLOOD, new Subject.Rack());

    private final Deque<Long> rang = new ArrayDeque<>();
    private final Set<UUID> heldBack = new LinkedHashSet<>();
    private boolean stands;
    private long untilMillis;

    /** Whether one more may ring by itself. */
    boolean isRoom(long monotonicMillis) {
        while (!rang.isEmpty() && monotonicMillis - rang.peek() >= STRETCH_MILLIS) {
            rang.remove();
        }
        return !stands && heldBack.isEmpty() && rang.size() < SINGLY;
    }

    /** Whether an alarm rings by itself now; it is kept back if not. Danger always does, and so does what tells of a flood. */
    boolean letsRing(Alarm alarm, long monotonicMillis) {
        if (alarm.kind() == AlarmKind.FLOOD) {
            return true;
        }
        if (alarm.kind().urgency() != Urgency.DANGER && !isRoom(monotonicMillis)) {
            holdBack(alarm.id());
            return false;
        }
        rang.add(monotonicMillis);
        return true;
    }

    void holdBack(UUID alarm) {
        heldBack.add(alarm);
    }

    /** Whether messages are kept back now. */
    boolean stands() {
        return stands;
    }

    /** Whether something was kept back and nobody was told of that yet. */
    boolean begins(List<Alarm> alive) {
        if (!stands && untold(alive).isEmpty()) {
            heldBack.clear();
        }
        return !stands && !heldBack.isEmpty();
    }

    /** Whether it is time to tell what was kept back since the last time, or to end. */
    boolean isDue(long monotonicMillis) {
        return stands && monotonicMillis >= untilMillis;
    }

    /** What was kept back is told together now; another stretch begins. */
    void startStretch(long monotonicMillis) {
        heldBack.clear();
        stands = true;
        untilMillis = monotonicMillis + STRETCH_MILLIS;
    }

    /** Whether so few were kept back since the last time that they can be told singly. */
    boolean isSubsiding(List<Alarm> alive) {
        return untold(alive).size() < FEW;
    }

    /** The alarms kept back since the last time that still want somebody. */
    List<Alarm> untold(List<Alarm> alive) {
        return alive.stream()
                .filter(alarm -> heldBack.contains(alarm.id()))
                .filter(alarm -> !alarm.told()
                        && alarm.cover() == Cover.NONE
                        && alarm.state().isUnacknowledged())
                .toList();
    }

    /** What begins when these are told together. */
    static Begun begun(List<Alarm> alarms) {
        Map<AlarmKind, Long> kinds = alarms.stream()
                .collect(Collectors.groupingBy(
                        Alarm::kind, () -> new EnumMap<>(AlarmKind.class), Collectors.counting()));
        String counted = kinds.entrySet().stream()
                .map(entry -> entry.getValue() + " " + entry.getKey())
                .collect(Collectors.joining(", "));
        String line =
                alarms.size() + " alarms are not told singly: " + counted + ". All of them stand in the alarm book.";
        List<String> tags = alarms.stream()
                .flatMap(alarm -> alarm.tags().stream())
                .distinct()
                .toList();
        return new Begun(KEY, true, Cause.ofService(line), tags);
    }

    /** It is over; what was kept back last is told singly. */
    void end() {
        stands = false;
        heldBack.clear();
    }
}
