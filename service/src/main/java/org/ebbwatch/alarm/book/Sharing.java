package org.ebbwatch.alarm.book;

import java.util.Optional;
import org.ebbwatch.alarm.book.AlarmKind.Scope;
import org.ebbwatch.alarm.book.Report.Condition;

/**
 * How conditions that may have one cause are gathered into one alarm of their board.
 *
 * @param patienceMillis how long one waits for others that begin the same, in the time of its board or of the host, whichever is
 *     over first; the third ends the waiting at once
 * @param companyMillis so long after the last one began, another joins the alarm of the board without ringing
 */
record Sharing(long patienceMillis, long companyMillis) {
    /** So many cells of one board that begin the same have one cause. */
    static final int LEAST = 3;

    /** A plug, a mains dip or a board that starts again reaches every channel within seconds. */
    private static final Sharing SUDDEN = new Sharing(2_000, 60_000);

    /** Sun and draught reach one cell after the other; at less than 1 K/min a cell gains less than 2 K meanwhile. */
    private static final Sharing SLOW = new Sharing(120_000, 600_000);

    /** Empty where a condition is never one of several. */
    static Optional<Sharing> of(Condition condition) {
        if (condition.cause().passage().isEmpty()) {
            return Optional.empty();
        }
        if (condition.mild()) {
            return Optional.of(SLOW);
        }
        return condition.kind().scope() == Scope.SHARED ? Optional.of(SUDDEN) : Optional.empty();
    }
}
