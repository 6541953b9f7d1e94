package org.ebbwatch.alarm;

import static java.util.Objects.requireNonNull;

import java.util.UUID;
import org.ebbwatch.alarm.book.AlarmStep;

/**
 * What a person asks of an alarm.
 *
 * @param alarm which
 * @param seen how many steps it had made as the person saw it; see {@link AlarmView#sequence()}
 * @param step one a person may ask for
 * @param by who asks
 * @param reason why; empty where none is needed
 * @param minutes for how long; 0 where that says nothing
 */
public record AlarmRequest(UUID alarm, long seen, AlarmStep step, String by, String reason, int minutes) {
    public AlarmRequest {
        requireNonNull(alarm);
        requireNonNull(by);
        requireNonNull(reason);
        if (!step.isAPersons()) {
            throw new IllegalArgumentException("nobody asks for " + step);
        }
    }

    /** Everything that is asked for, but not what was seen before: the same text, the same request. */
    String text() {
        return String.join("\u001f", "alarm", alarm.toString(), step.name(), by, reason, Integer.toString(minutes));
    }
}
