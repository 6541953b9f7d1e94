package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import java.util.List;
import java.util.UUID;
import org.ebbwatch.alarm.AlarmView;
import org.ebbwatch.alarm.book.Alarm.PutAway;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.alarm.book.AlarmStep;
import org.ebbwatch.alarm.book.Cover;
import org.ebbwatch.judge.FindingKind.Urgency;

/**
 * One alarm.
 *
 * @param id the same over restarts and in every message
 * @param sequence rises with each step it makes; its ETag when it is asked for alone
 * @param kind what is the matter
 * @param urgency how loudly it asks for a person
 * @param latched whether it must be reset by a person after its condition is gone
 * @param state by its condition
 * @param cover what a person put over it
 * @param told whether the outlets were told; false while it waits for the morning
 * @param what what is the matter, in one sentence
 * @param consequence what may come of it
 * @param toDo what to do about it
 * @param cause why, in one line
 * @param passageId the passage it was first seen on; null where it is on none
 * @param tags of the cells it is about
 * @param board the board it was first seen on, or empty
 * @param channel from 0; null where there is none
 * @param eventMillis event time of that board at which its condition began
 * @param journalSequence journal entry, readings counted, after which it was first told; null where there is none
 * @param simulated whether it comes from a simulator, not from cells
 * @param raisedAt when it was raised first, RFC 3339 in UTC
 * @param acknowledgedBy who acknowledged it last, or empty
 * @param coveredBy who put it away, or empty
 * @param coverReason why it was put away, or empty
 * @param coveredUntil when that ends by itself, RFC 3339 in UTC; null where it does not
 * @param allowed what a person may ask for now
 */
@Serdeable
public record AlarmAnswer(
        UUID id,
        long sequence,
        AlarmKind kind,
        Urgency urgency,
        boolean latched,
        AlarmState state,
        Cover cover,
        boolean told,
        String what,
        String consequence,
        String toDo,
        String cause,
        @Nullable UUID passageId,
        List<String> tags,
        String board,
        @Nullable Integer channel,
        long eventMillis,
        @Nullable Long journalSequence,
        boolean simulated,
        @Nullable String raisedAt,
        String acknowledgedBy,
        String coveredBy,
        String coverReason,
        @Nullable String coveredUntil,
        List<AlarmStep> allowed) {

    /** An alarm as it is told. */
    public static AlarmAnswer of(AlarmView alarm) {
        var cause = alarm.cause();
        return new AlarmAnswer(
                alarm.id(),
                alarm.sequence(),
                alarm.kind(),
                alarm.urgency(),
                alarm.latched(),
                alarm.state(),
                alarm.cover(),
                alarm.told(),
                alarm.what(),
                alarm.consequence(),
                alarm.toDo(),
                cause.line(),
                cause.passage().orElse(null),
                alarm.tags(),
                cause.board(),
                cause.channel() < 0 ? null : cause.channel(),
                cause.eventMillis(),
                cause.journalSequence() == 0 ? null : cause.journalSequence(),
                cause.simulatedSpeed() > 0,
                Figures.wallTime(alarm.raisedWallMillis()),
                alarm.acknowledgedBy(),
                alarm.putAway().map(PutAway::who).orElse(""),
                alarm.putAway().map(PutAway::reason).orElse(""),
                alarm.putAway()
                        .map(it -> Figures.wallTime(it.untilWallMillis().orElse(0)))
                        .orElse(null),
                alarm.allowed().stream().sorted().toList());
    }
}
