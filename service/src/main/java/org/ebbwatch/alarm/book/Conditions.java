package org.ebbwatch.alarm.book;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.function.ToLongFunction;
import org.ebbwatch.alarm.book.AlarmKind.Scope;
import org.ebbwatch.alarm.book.Report.Condition;

/**
 * What stands on the rack, sorted by the alarm it belongs to. Sixteen channels that see one cause make one alarm.
 *
 * <p>What is gone is believed gone only after it stayed away for 60 s in the time of its source (common practice for
 * temperature, from memory), so that a reading that flickers at a limit does not ring again and again. What ends because
 * its source is over ends at once.
 */
final class Conditions {
    /** How long a condition must stay away. */
    static final long AWAY_MILLIS = 60_000;
    /** So many passages of one board that begin the same at once have one cause. */
    static final int SHARING = 3;

    private final Map<String, Map<AlarmKind, AlarmKey>> bySource = new HashMap<>();
    private final Map<AlarmKey, Map<String, Cause>> standing = new LinkedHashMap<>();
    private final Map<AlarmKey, Leaving> leaving = new LinkedHashMap<>();

    private record Leaving(String source, String board, long sinceMillis) {}

    private record Begun(Report report, Condition condition) {}

    /** What reports led to: keys whose conditions stand now, and keys whose are over for good. */
    record Change(List<AlarmKey> begun, List<AlarmKey> ended) {}

    /** Takes reports that belong to one moment. */
    Change take(Collection<Report> reports) {
        return take(reports, key -> false);
    }

    /**
     * Takes up what an earlier run left.
     *
     * @param active whether an alarm with this key is active; its condition goes on in it
     */
    Change takeUp(Collection<Report> reports, Predicate<AlarmKey> active) {
        return take(reports, active);
    }

    private Change take(Collection<Report> reports, Predicate<AlarmKey> active) {
        List<Begun> fresh = new ArrayList<>();
        List<AlarmKey> ended = new ArrayList<>();
        for (Report report : reports) {
            Map<AlarmKind, Condition> now = new EnumMap<>(AlarmKind.class);
            report.conditions().forEach(condition -> now.put(condition.kind(), condition));
            Map<AlarmKind, AlarmKey> before =
                    bySource.computeIfAbsent(report.source(), source -> new EnumMap<>(AlarmKind.class));
            for (AlarmKey key : List.copyOf(before.values())) {
                if (!now.containsKey(key.kind())) {
                    before.remove(key.kind());
                    leave(report, key);
                }
            }
            now.values().stream()
                    .filter(condition -> !before.containsKey(condition.kind()))
                    .forEach(condition -> fresh.add(new Begun(report, condition)));
            if (report.over()) {
                bySource.remove(report.source());
                leaving.forEach((key, left) -> {
                    if (left.source().equals(report.source())) {
                        ended.add(key);
                    }
                });
            }
        }
        leaving.keySet().removeAll(ended);
        List<AlarmKey> begun = new ArrayList<>();
        for (Begun one : fresh) {
            AlarmKey key = new AlarmKey(one.condition().kind(), subject(one.condition(), fresh, active));
            bySource.get(one.report().source()).put(key.kind(), key);
            standing.computeIfAbsent(key, none -> new LinkedHashMap<>())
                    .put(one.report().source(), one.condition().cause());
            leaving.remove(key);
            if (!begun.contains(key)) {
                begun.add(key);
            }
        }
        ended.removeAll(begun);
        return new Change(begun, ended);
    }

    private void leave(Report report, AlarmKey key) {
        Map<String, Cause> causes = standing.get(key);
        causes.remove(report.source());
        if (causes.isEmpty()) {
            standing.remove(key);
            leaving.put(key, new Leaving(report.source(), report.board(), report.eventMillis()));
        }
    }

    private static Subject subject(Condition condition, List<Begun> fresh, Predicate<AlarmKey> active) {
        AlarmKind kind = condition.kind();
        Cause cause = condition.cause();
        if (kind.scope() == Scope.RACK) {
            return new Subject.Rack();
        }
        Subject board = new Subject.Board(cause.board());
        if (kind.scope() == Scope.BOARD || cause.passage().isEmpty()) {
            return board;
        }
        Subject own = new Subject.Passage(cause.passage().get());
        if (kind.scope() == Scope.PASSAGE || active.test(new AlarmKey(kind, own))) {
            return own;
        }
        return active.test(new AlarmKey(kind, board)) || alike(condition, fresh) >= SHARING ? board : own;
    }

    private static long alike(Condition condition, List<Begun> fresh) {
        return fresh.stream()
                .map(Begun::condition)
                .filter(other -> other.kind() == condition.kind()
                        && other.cause().board().equals(condition.cause().board()))
                .count();
    }

    /**
     * Keys whose conditions have stayed away long enough.
     *
     * @param timeOf the present in the time of a board
     */
    List<AlarmKey> away(ToLongFunction<String> timeOf) {
        List<AlarmKey> ended = leaving.entrySet().stream()
                .filter(entry -> timeOf.applyAsLong(entry.getValue().board())
                                - entry.getValue().sinceMillis()
                        >= AWAY_MILLIS)
                .map(Map.Entry::getKey)
                .toList();
        leaving.keySet().removeAll(ended);
        return ended;
    }

    /** Whether the condition stands, or has not stayed away long enough. */
    boolean holds(AlarmKey key) {
        return standing.containsKey(key) || leaving.containsKey(key);
    }

    /** The first cause of a condition that stands. */
    Cause cause(AlarmKey key) {
        return standing.get(key).values().iterator().next();
    }

    /** Tags of the cells a condition stands on. */
    List<String> tags(AlarmKey key) {
        return standing.getOrDefault(key, Map.of()).values().stream()
                .map(Cause::tag)
                .filter(tag -> !tag.isEmpty())
                .distinct()
                .toList();
    }
}
