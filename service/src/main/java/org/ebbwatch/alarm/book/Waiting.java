package org.ebbwatch.alarm.book;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToLongFunction;
import org.ebbwatch.alarm.book.Report.Condition;

/** Conditions that wait for others of their board that begin the same, oldest first. */
final class Waiting {
    private final Map<Place, One> waiting = new LinkedHashMap<>();

    private record Place(String source, AlarmKind kind) {}

    /**
     * One that waits.
     *
     * @param board by whose event time it waits
     * @param sinceMillis of that time
     * @param sinceMonotonicMillis of the host's, for a board that falls silent
     */
    record One(String source, String board, long sinceMillis, long sinceMonotonicMillis, Condition condition) {
        boolean isAlike(Condition other) {
            return condition.kind() == other.kind()
                    && condition.cause().board().equals(other.cause().board());
        }

        private boolean isDue(ToLongFunction<String> timeOf, long monotonicMillis) {
            long patience = Sharing.of(condition).orElseThrow().patienceMillis();
            return timeOf.applyAsLong(board) - sinceMillis >= patience
                    || monotonicMillis - sinceMonotonicMillis >= patience;
        }
    }

    void add(Report report, Condition condition, long monotonicMillis) {
        waiting.put(
                new Place(report.source(), condition.kind()),
                new One(report.source(), report.board(), report.eventMillis(), monotonicMillis, condition));
    }

    boolean has(String source, AlarmKind kind) {
        return waiting.containsKey(new Place(source, kind));
    }

    /** Takes one out that waits no longer. */
    One remove(String source, AlarmKind kind) {
        return waiting.remove(new Place(source, kind));
    }

    /** Takes out those that are enough to be one cause with this one; none where they are not. */
    List<One> takeGathered(Condition condition) {
        List<One> alike = new ArrayList<>(waiting.values());
        alike.removeIf(one -> !one.isAlike(condition));
        if (alike.size() < Sharing.LEAST) {
            return List.of();
        }
        waiting.values().removeAll(alike);
        return alike;
    }

    /** Takes out those that have waited long enough. */
    List<One> takeDue(ToLongFunction<String> timeOf, long monotonicMillis) {
        List<One> due = new ArrayList<>(waiting.values());
        due.removeIf(one -> !one.isDue(timeOf, monotonicMillis));
        waiting.values().removeAll(due);
        return due;
    }

    List<One> takeAll() {
        List<One> all = List.copyOf(waiting.values());
        waiting.clear();
        return all;
    }
}
