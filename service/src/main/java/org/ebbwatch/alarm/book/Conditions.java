package org.ebbwatch.alarm.book;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToLongFunction;
import org.ebbwatch.alarm.book.AlarmKind.Scope;
import org.ebbwatch.alarm.book.Report.Condition;

/**
 * What stands on the rack, sorted by the alarm it belongs to. Sixty-four channels that see one cause make one alarm.
 *
 * <p>What may have a cause in common with its neighbours {@linkplain Waiting waits} for them a moment, and joins their alarm where
 * there is one that is {@linkplain Sharing young}. A trip temperature and fast warming wait for nothing.
 *
 * <p>What is gone is believed gone only after it stayed away for 60 s in the time of its source (common practice for
 * temperature, from memory), so that a reading that flickers at a limit does not ring again and again. What ends because
 * its source is over ends at once.
 */
final class Conditions {
    /** How long a condition must stay away. */
    static final long AWAY_MILLIS = 60_000;

    private final Map<String, Map<AlarmKind, AlarmKey>> bySource = new HashMap<>();
    private final Map<AlarmKey, Map<String, Cause>> standing = new LinkedHashMap<>();
    private final Map<AlarmKey, Leaving> leaving = new LinkedHashMap<>();
    private final Waiting waiting = new Waiting();

    private record Leaving(String source, String board, long sinceMillis) {}

    /**
     * A key whose condition stands now.
     *
     * @param anew whether it began again on several, so that it rings although its alarm is active
     * @param cause the first of it
     * @param tags of the cells it is on
     */
    record Begun(AlarmKey key, boolean anew, Cause cause, List<String> tags) {}

    /** What reports led to: keys whose conditions stand now, and keys whose are over for good. */
    record Change(List<Begun> begun, List<AlarmKey> ended) {
        Change() {
            this(new ArrayList<>(), new ArrayList<>());
        }
    }

    /** Takes reports that belong to one moment. */
    Change take(Collection<Report> reports, Living alarms, long monotonicMillis) {
        var change = new Change();
        List<Report> brief = new ArrayList<>();
        Map<Report, List<Condition>> fresh = new LinkedHashMap<>();
        for (Report report : reports) {
            fresh.put(report, sort(report, brief, change));
        }
        leaving.keySet().removeAll(change.ended());
        fresh.forEach((report, conditions) ->
                conditions.forEach(condition -> place(report, condition, alarms, monotonicMillis, change)));
        fresh.values().stream()
                .flatMap(List::stream)
                .forEach(condition -> gather(waiting.takeGathered(condition), alarms, change));
        brief.forEach(report -> report.conditions().forEach(condition -> {
            AlarmKey key = own(condition);
            begin(key, report.source(), condition.cause(), change);
            bySource.get(report.source()).remove(key.kind());
            leave(report, key);
        }));
        change.ended().removeAll(change.begun().stream().map(Begun::key).toList());
        return change;
    }

    /** Takes up what an earlier run left; nothing waits that may have waited before. */
    Change takeUp(Collection<Report> reports, Living alarms) {
        Change change = take(reports, alarms, 0);
        waiting.takeAll().forEach(one -> beginAlone(one, change));
        return change;
    }

    /** What is new in a report; lets go of what is no longer in it. */
    private List<Condition> sort(Report report, List<Report> brief, Change change) {
        Map<AlarmKind, Condition> now = new EnumMap<>(AlarmKind.class);
        report.conditions().forEach(condition -> now.put(condition.kind(), condition));
        Map<AlarmKind, AlarmKey> before =
                bySource.computeIfAbsent(report.source(), source -> new EnumMap<>(AlarmKind.class));
        for (AlarmKind kind : AlarmKind.values()) {
            if (waiting.has(report.source(), kind) && isOver(kind, now)) {
                Condition gone = waiting.remove(report.source(), kind).condition();
                if (!report.over() && !gone.mild()) {
                    brief.add(new Report(report.source(), report.board(), report.eventMillis(), false, List.of(gone)));
                }
            }
        }
        for (AlarmKey key : List.copyOf(before.values())) {
            Condition still = now.get(key.kind());
            if (still == null || leavesItsGroup(key, still)) {
                before.remove(key.kind());
                leave(report, key);
            }
        }
        if (report.over()) {
            bySource.remove(report.source());
            leaving.forEach((key, left) -> {
                if (left.source().equals(report.source())) {
                    change.ended().add(key);
                }
            });
        }
        return now.values().stream()
                .filter(condition ->
                        !before.containsKey(condition.kind()) && !waiting.has(report.source(), condition.kind()))
                .toList();
    }

    /** Whether what waits is gone, or waits no longer because it has become worse. */
    private static boolean isOver(AlarmKind kind, Map<AlarmKind, Condition> now) {
        return !now.containsKey(kind) || Sharing.of(now.get(kind)).isEmpty();
    }

    private static boolean leavesItsGroup(AlarmKey key, Condition condition) {
        return condition.kind() == AlarmKind.WARMING
                && !condition.mild()
                && key.subject() instanceof Subject.Board
                && condition.cause().passage().isPresent();
    }

    private void leave(Report report, AlarmKey key) {
        Map<String, Cause> causes = standing.get(key);
        causes.remove(report.source());
        if (causes.isEmpty()) {
            standing.remove(key);
            leaving.put(key, new Leaving(report.source(), report.board(), report.eventMillis()));
        }
    }

    private void place(Report report, Condition condition, Living alarms, long monotonicMillis, Change change) {
        Optional<Sharing> sharing = Sharing.of(condition);
        AlarmKey own = own(condition);
        if (sharing.isEmpty() || alarms.isActive(own)) {
            begin(own, report.source(), condition.cause(), change);
            return;
        }
        AlarmKey shared = shared(condition);
        if (alarms.wasAbout(shared, condition.cause().tag()) || isYoung(shared, condition, sharing.get(), alarms)) {
            begin(shared, report.source(), condition.cause(), change);
        } else {
            waiting.add(report, condition, monotonicMillis);
        }
    }

    private boolean isYoung(AlarmKey shared, Condition condition, Sharing sharing, Living alarms) {
        if (!alarms.isInView(shared) || !holds(shared)) {
            return false;
        }
        long latest = standing.getOrDefault(shared, Map.of()).values().stream()
                .mapToLong(Cause::eventMillis)
                .max()
                .orElseGet(() -> leaving.get(shared).sinceMillis());
        return condition.cause().eventMillis() - latest < sharing.companyMillis();
    }

    private void gather(List<Waiting.One> alike, Living alarms, Change change) {
        if (alike.isEmpty()) {
            return;
        }
        AlarmKey shared = shared(alike.get(0).condition());
        boolean anew = alarms.isActive(shared);
        if (anew && !alarms.isInView(shared)) {
            alike.forEach(one -> beginAlone(one, change));
            return;
        }
        for (Waiting.One one : alike) {
            stand(shared, one.source(), one.condition().cause());
        }
        Cause first = anew ? alike.get(0).condition().cause() : cause(shared);
        change.begun().add(new Begun(shared, anew, first, tags(shared)));
    }

    private void beginAlone(Waiting.One one, Change change) {
        begin(own(one.condition()), one.source(), one.condition().cause(), change);
    }

    private void begin(AlarmKey key, String source, Cause cause, Change change) {
        stand(key, source, cause);
        var begun = new Begun(key, false, cause(key), tags(key));
        change.begun().replaceAll(other -> other.key().equals(key) && !other.anew() ? begun : other);
        if (!change.begun().contains(begun)) {
            change.begun().add(begun);
        }
    }

    private void stand(AlarmKey key, String source, Cause cause) {
        bySource.get(source).put(key.kind(), key);
        standing.computeIfAbsent(key, none -> new LinkedHashMap<>()).put(source, cause);
        leaving.remove(key);
    }

    private static AlarmKey own(Condition condition) {
        Cause cause = condition.cause();
        Scope scope = condition.kind().scope();
        Subject subject = scope == Scope.RACK
                ? new Subject.Rack()
                : scope == Scope.BOARD || cause.passage().isEmpty()
                        ? new Subject.Board(cause.board())
                        : new Subject.Passage(cause.passage().get());
        return new AlarmKey(condition.kind(), subject);
    }

    private static AlarmKey shared(Condition condition) {
        return new AlarmKey(
                condition.kind(), new Subject.Board(condition.cause().board()));
    }

    /** Those that have waited for company long enough and stand alone. */
    List<Begun> due(ToLongFunction<String> timeOf, long monotonicMillis) {
        var change = new Change();
        waiting.takeDue(timeOf, monotonicMillis).forEach(one -> beginAlone(one, change));
        return change.begun();
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
    private Cause cause(AlarmKey key) {
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
