package org.ebbwatch.evening.rule;

import static java.util.Objects.requireNonNull;

import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.alarm.book.Cover;

/**
 * One living alarm.
 *
 * @param subject the cells' tags, the board or the rack
 */
public record AlarmFacts(AlarmKind kind, String subject, AlarmState state, Cover cover) {
    public AlarmFacts {
        requireNonNull(kind);
        requireNonNull(subject);
        requireNonNull(state);
        requireNonNull(cover);
    }
}
