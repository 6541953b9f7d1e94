package org.ebbwatch.alarm.book;

/**
 * Something one outlet is told of an alarm.
 *
 * @param outlet name of the outlet
 * @param alarm as it stands
 * @param what the step it made, or {@link #ESCALATED}
 * @param rings whether it should wake a person
 * @param who asked for the step; empty where nobody did
 * @param reason why, where a person gave one
 * @param at when
 */
public record Telling(String outlet, Alarm alarm, String what, boolean rings, String who, String reason, Moment at) {
    /** Nobody acknowledged it in time: another outlet is told. No step of the alarm, which stays as it is. */
    public static final String ESCALATED = "ESCALATED";

    static Telling of(AlarmEvent event, String outlet) {
        return new Telling(
                outlet, event.alarm(), event.step().name(), event.rings(), event.who(), event.reason(), event.at());
    }

    static Telling late(Alarm alarm, String outlet, String what, Moment at) {
        return new Telling(outlet, alarm, what, true, "", "", at);
    }
}
