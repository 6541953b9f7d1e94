package org.ebbwatch.alarm.book;

import static java.util.Objects.requireNonNull;

import java.time.Duration;
import java.util.Optional;
import org.ebbwatch.judge.FindingKind.Urgency;

/**
 * Of which alarms an outlet is told, and when. Danger is told at any hour.
 *
 * @param from the least urgent it is told of
 * @param hours in which it is told; empty: always
 * @param escalation how long nobody must have acknowledged an alarm before it is told; empty: it is told at once
 */
public record Route(Urgency from, Optional<LocalHours> hours, Optional<Duration> escalation) {
    /** Everything, at once, always. */
    public static final Route ALL = new Route(Urgency.ADVISORY, Optional.empty(), Optional.empty());

    public Route {
        requireNonNull(from);
        requireNonNull(hours);
        requireNonNull(escalation);
    }

    boolean admits(Alarm alarm, long wallMillis) {
        Urgency urgency = alarm.kind().urgency();
        boolean now = urgency == Urgency.DANGER
                || hours.map(it -> it.include(wallMillis)).orElse(true);
        return urgency.compareTo(from) >= 0 && now;
    }
}
