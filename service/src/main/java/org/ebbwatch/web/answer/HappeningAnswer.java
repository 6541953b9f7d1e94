package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import java.util.UUID;
import org.ebbwatch.passage.Happening;
import org.ebbwatch.passage.Happenings.Numbered;

/**
 * Something that happened.
 *
 * @param number rises from one to the next, across restarts too; the event's id
 * @param kind which sort of thing
 * @param board the board it happened on
 * @param passageId whose; null where it is about the board
 * @param tag of that passage's cell; empty where there is none
 * @param channel that passage is on, from 0; null where there is none
 * @param eventMillis event time; null where the board was not heard yet
 * @param alarmId which alarm; null where it is about none
 * @param sequence of that alarm afterwards, else of that passage: its ETag; null where there is none
 * @param what the phase, the finding kind, the act, what is asked for, the state of the link or the alarm's step
 * @param line in words; may be empty
 */
@Serdeable
public record HappeningAnswer(
        long number,
        Happening.Kind kind,
        String board,
        @Nullable UUID passageId,
        String tag,
        @Nullable Integer channel,
        @Nullable Long eventMillis,
        @Nullable UUID alarmId,
        @Nullable Long sequence,
        String what,
        String line) {

    /** A happening as it is told. */
    public static HappeningAnswer of(Numbered numbered) {
        Happening happening = numbered.happening();
        boolean isActedOn = happening.passage().isPresent() || happening.alarm().isPresent();
        return new HappeningAnswer(
                numbered.number(),
                happening.kind(),
                happening.board(),
                happening.passage().orElse(null),
                happening.tag(),
                happening.channel() < 0 ? null : happening.channel(),
                happening.eventMillis() < 0 ? null : happening.eventMillis(),
                happening.alarm().orElse(null),
                isActedOn ? happening.sequence() : null,
                happening.what(),
                happening.line());
    }
}
