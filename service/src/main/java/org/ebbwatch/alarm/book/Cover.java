package org.ebbwatch.alarm.book;

/** Whether a person has put an alarm out of the way. Beneath a cover its state goes on by its condition. */
public enum Cover {
    /** It is in plain view and may ring. */
    NONE,
    /** Put away by a person for a reason and a time that ends by itself. */
    SHELVED,
    /** Put away by a person, for work on what it watches, until a person puts it back. */
    OUT_OF_SERVICE
}
