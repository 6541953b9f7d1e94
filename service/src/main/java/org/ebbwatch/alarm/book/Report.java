package org.ebbwatch.alarm.book;

import static java.util.Objects.requireNonNull;

import java.util.List;

/**
 * All that stands at one source: what is not in it stands no longer.
 *
 * @param source a name that stays the same; two sources never share one
 * @param board the board by whose event time it counts, or empty
 * @param eventMillis event time of the report
 * @param over whether nothing will ever come from it again
 * @param conditions at most one of a kind
 */
public record Report(String source, String board, long eventMillis, boolean over, List<Condition> conditions) {
    public Report {
        requireNonNull(source);
        requireNonNull(board);
        conditions = over ? List.of() : List.copyOf(conditions);
    }

    /**
     * Something that stands and why.
     *
     * @param mild whether it is a slight warming, which something outside the cell may cause in its neighbours too
     */
    public record Condition(AlarmKind kind, Cause cause, boolean mild) {
        public Condition {
            requireNonNull(kind);
            requireNonNull(cause);
            if (mild && kind != AlarmKind.WARMING) {
                throw new IllegalArgumentException(kind + " is never mild");
            }
        }

        /** Something that is not mild. */
        public Condition(AlarmKind kind, Cause cause) {
            this(kind, cause, false);
        }
    }
}
