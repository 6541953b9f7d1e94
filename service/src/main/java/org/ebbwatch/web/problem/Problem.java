package org.ebbwatch.web.problem;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonInclude.Include;
import io.micronaut.core.annotation.Nullable;
import io.micronaut.http.HttpStatus;
import io.micronaut.serde.annotation.Serdeable;
import java.util.List;
import java.util.UUID;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.alarm.book.AlarmStep;
import org.ebbwatch.alarm.book.Cover;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Phase;

/**
 * Problem details (RFC 9457).
 *
 * @param type which problem; a reference that can be followed, or about:blank
 * @param title the problem in short, the same each time
 * @param status the HTTP status
 * @param detail what was wrong this time, and what to do
 * @param instance the path that was asked for
 * @param phase the phase the passage is in, where that is why
 * @param request what was asked of the passage or the alarm, where it does not allow it
 * @param allowed what the passage allows instead
 * @param sequence the passage's or the alarm's sequence now, where the request knew another one
 * @param alarm the alarm as it is, where the request was about one
 */
@Serdeable
@JsonInclude(Include.NON_NULL)
public record Problem(
        String type,
        String title,
        int status,
        String detail,
        String instance,
        @Nullable Phase phase,
        @Nullable String request,
        @Nullable List<Act> allowed,
        @Nullable Long sequence,
        @Nullable OfAlarm alarm) {

    /**
     * An alarm that was not changed.
     *
     * @param id which
     * @param kind what it is about
     * @param state by its condition
     * @param cover what covers it
     * @param allowed what it allows now
     */
    @Serdeable
    public record OfAlarm(UUID id, AlarmKind kind, AlarmState state, Cover cover, List<AlarmStep> allowed) {}

    private Problem(String type, String title, int status, String detail, String instance) {
        this(type, title, status, detail, instance, null, null, null, null, null);
    }

    static Problem of(ProblemKind kind, String detail, String instance) {
        return new Problem(kind.type(), kind.title(), kind.status().getCode(), detail, instance);
    }

    /** The same problem of a passage in this phase, which allows these acts. */
    Problem with(Phase itsPhase, String asked, List<Act> itsAllowed) {
        return new Problem(type, title, status, detail, instance, itsPhase, asked, itsAllowed, sequence, alarm);
    }

    /** The same problem of a passage whose sequence is this. */
    Problem with(long itsSequence) {
        return new Problem(type, title, status, detail, instance, phase, request, allowed, itsSequence, alarm);
    }

    /** The same problem of this alarm, of which that was asked. */
    Problem with(OfAlarm itsAlarm, String asked, @Nullable Long itsSequence) {
        return new Problem(type, title, status, detail, instance, phase, asked, allowed, itsSequence, itsAlarm);
    }

    /** A problem that means no more than its status. */
    static Problem of(HttpStatus status, String instance) {
        return new Problem(
                "about:blank",
                status.getReason(),
                status.getCode(),
                "The request cannot be answered as it stands; /api/v1/openapi.yml says what can be asked.",
                instance);
    }
}
