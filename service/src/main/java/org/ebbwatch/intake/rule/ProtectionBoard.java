package org.ebbwatch.intake.rule;

/** The small board in front of many cells that opens a switch when the voltage gets low. */
public enum ProtectionBoard {
    /** The cell never had one. */
    NONE,
    /** It was taken off. */
    REMOVED,
    /** It is still there: the cell cannot be emptied through it. */
    PRESENT,
    /** Nobody looked. */
    UNKNOWN
}
