package org.ebbwatch.alarm.book;

import java.util.Set;

/** How a person's request ended. */
public sealed interface AlarmAnswer {

    /** Done; what it led to. */
    record Done(AlarmEvent event) implements AlarmAnswer {}

    /**
     * Refused, nothing changed.
     *
     * @param why which sort of refusal
     * @param words the same for a person
     * @param allowed what may be asked of this alarm instead
     */
    record Refused(Why why, String words, Set<AlarmStep> allowed) implements AlarmAnswer {}

    /** Why a request is refused. */
    enum Why {
        /** There is no such alarm, or it is over. */
        NO_SUCH_ALARM,
        /** Not in the state it is in. */
        NOT_NOW,
        /** An alarm of this kind stays in view. */
        STAYS_IN_VIEW,
        /** It was not said who asks. */
        NO_NAME,
        /** It was not said why. */
        NO_REASON,
        /** It is too short or too long. */
        BAD_TIME
    }
}
