package org.ebbwatch.alarm.book;

import static java.util.Objects.requireNonNull;

import org.ebbwatch.alarm.book.AlarmTransitions.Standing;

/**
 * A step an alarm made.
 *
 * @param alarm as it is after the step; {@link Alarm#steps()} numbers the steps of an alarm from 1
 * @param step what happened
 * @param before where it was
 * @param who asked for it; empty where nobody did
 * @param reason why, where a person gave one
 * @param at when
 * @param sent whether the outlets are told of it; an alarm that waits for the morning is not told before
 * @param rings whether it should wake a person
 */
public record AlarmEvent(
        Alarm alarm,
        AlarmStep step,
        Standing before,
        String who,
        String reason,
        Moment at,
        boolean sent,
        boolean rings) {
    public AlarmEvent {
        requireNonNull(alarm);
        requireNonNull(step);
        requireNonNull(before);
        requireNonNull(who);
        requireNonNull(reason);
        requireNonNull(at);
    }
}
