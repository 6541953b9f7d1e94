package org.ebbwatch.alarm;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.ebbwatch.alarm.book.Alarm;
import org.ebbwatch.alarm.book.Alarm.PutAway;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.alarm.book.AlarmStep;
import org.ebbwatch.alarm.book.Cause;
import org.ebbwatch.alarm.book.Cover;
import org.ebbwatch.judge.FindingKind.Urgency;

/**
 * One alarm for people to look at.
 *
 * @param id by which it is acknowledged
 * @param sequence how many steps it has made; rises with each
 * @param kind what is the matter
 * @param urgency how loudly it asks for a person
 * @param latched whether it must be reset after its condition is gone
 * @param subject what it is about: a passage, a board or the rack
 * @param state by its condition
 * @param cover what a person put over it
 * @param told whether the outlets were told; false while it waits for the morning
 * @param what what is the matter, in one sentence
 * @param consequence what may come of it
 * @param toDo what to do about it
 * @param cause why, and where to read it up
 * @param tags of the cells it is about
 * @param raisedWallMillis when it was raised first, a label
 * @param acknowledgedBy who acknowledged it last, or empty
 * @param putAway who covered it, why and until when
 * @param allowed what a person may ask for now
 */
public record AlarmView(
        UUID id,
        long sequence,
        AlarmKind kind,
        Urgency urgency,
        boolean latched,
        String subject,
        AlarmState state,
        Cover cover,
        boolean told,
        String what,
        String consequence,
        String toDo,
        Cause cause,
        List<String> tags,
        long raisedWallMillis,
        String acknowledgedBy,
        Optional<PutAway> putAway,
        Set<AlarmStep> allowed) {

    /** Unacknowledged before acknowledged, urgent before advisory, old before young; what is covered comes last. */
    public static final Comparator<AlarmView> NEEDED_FIRST = Comparator.comparing(AlarmView::cover)
            .thenComparing(alarm -> !alarm.state().isUnacknowledged())
            .thenComparing(AlarmView::urgency, Comparator.reverseOrder())
            .thenComparing(AlarmView::raisedWallMillis)
            .thenComparing(AlarmView::id);

    static AlarmView of(Alarm alarm) {
        return new AlarmView(
                alarm.id(),
                alarm.steps(),
                alarm.kind(),
                alarm.kind().urgency(),
                alarm.kind().isLatched(),
                alarm.subject().text(),
                alarm.state(),
                alarm.cover(),
                alarm.told(),
                alarm.what(),
                alarm.consequence(),
                alarm.toDo(),
                alarm.cause(),
                alarm.tags(),
                alarm.raisedWallMillis(),
                alarm.acknowledgedBy(),
                alarm.putAway(),
                alarm.allowed());
    }
}
