package org.ebbwatch.alarm.book;

import static java.util.Objects.requireNonNull;

import java.util.UUID;

/**
 * A moment at which an alarm was raised.
 *
 * @param alarm which
 * @param kind what was the matter
 * @param subject what it was about
 * @param line why, in one line
 * @param wallMillis when, a label
 */
public record Raised(UUID alarm, AlarmKind kind, Subject subject, String line, long wallMillis) {
    public Raised {
        requireNonNull(alarm);
        requireNonNull(kind);
        requireNonNull(subject);
        requireNonNull(line);
    }
}
