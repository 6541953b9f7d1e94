package org.ebbwatch.alarm.book;

/** What can happen to an alarm. */
public enum AlarmStep {
    /** Its condition began to stand. */
    RAISED(false),
    /** Its condition stands no longer. */
    RETURNED(false),
    /** The night is over: what was not to ring at night rings now. */
    TOLD(false),
    /** A person knows. */
    ACKNOWLEDGED(true),
    /** A person has looked after what left a latched alarm. */
    RESET(true),
    /** A person put it away for a time. */
    SHELVED(true),
    /** That time is over, or the person ended it. */
    SHELVING_ENDED(true),
    /** A person took it out of service. */
    TAKEN_OUT_OF_SERVICE(true),
    /** A person put it back in service. */
    PUT_BACK_IN_SERVICE(true);

    private final boolean aPersons;

    AlarmStep(boolean aPersons) {
        this.aPersons = aPersons;
    }

    /** Whether a person may ask for it. */
    public boolean isAPersons() {
        return aPersons;
    }
}
