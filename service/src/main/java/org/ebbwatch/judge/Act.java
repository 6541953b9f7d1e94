package org.ebbwatch.judge;

/** What a person can do to a passage. */
public enum Act {
    /** The load was put on, or is to be closed where the board switches it. */
    PUT_ON,
    /** The load was taken off, or is to be opened. */
    TAKE_OFF,
    /** The leads were bonded without a spark. */
    TIE_OFF,
    /** The leads were touched together and sparked: not empty. */
    SPARK,
    /** The bond was parted for the last measurement. */
    PART,
    /** The cell is handed over as emptied. */
    RELEASE,
    /** The cell is taken out without a verdict. */
    WITHDRAW,
    /** A held cell goes back on its load; what locked it was dealt with. */
    DRAIN_AGAIN
}
