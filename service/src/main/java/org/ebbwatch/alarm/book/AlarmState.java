package org.ebbwatch.alarm.book;

/** Where an alarm is by its condition and what people did about it; the states of IEC 62682 and ISA-18.2. */
public enum AlarmState {
    /** The condition does not stand, and nobody is owed anything. */
    NORMAL,
    /** The condition stands and nobody has acknowledged it. */
    UNACKNOWLEDGED,
    /** The condition stands and somebody knows. */
    ACKNOWLEDGED,
    /** The condition went before anybody acknowledged it. */
    RETURNED_UNACKNOWLEDGED,
    /** As before, of a kind that must also be reset. */
    LATCHED_UNACKNOWLEDGED,
    /** The condition went and somebody knows; it must still be reset. */
    LATCHED_ACKNOWLEDGED;

    /** Whether the condition stands. */
    public boolean isActive() {
        return this == UNACKNOWLEDGED || this == ACKNOWLEDGED;
    }

    /** Whether somebody has still to say that he knows. */
    public boolean isUnacknowledged() {
        return this == UNACKNOWLEDGED || this == RETURNED_UNACKNOWLEDGED || this == LATCHED_UNACKNOWLEDGED;
    }
}
