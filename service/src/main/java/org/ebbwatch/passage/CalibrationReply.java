package org.ebbwatch.passage;

/** How a request about calibrations ended. */
public sealed interface CalibrationReply {

    /** The calibration under way as it stands now. */
    record Running(CalibrationRun run) implements CalibrationReply {}

    /** It was kept, or withdrawn. */
    record Kept(KeptCalibration kept) implements CalibrationReply {}

    /** It was given up; nothing of it was kept. */
    record GivenUp() implements CalibrationReply {}

    /**
     * Refused; nothing was done.
     *
     * @param detail what is the matter, and what to do
     */
    record Refused(Why why, String detail) implements CalibrationReply {}

    /** Why it was refused. */
    enum Why {
        /** There is no such calibration. */
        UNKNOWN,
        /** There is no such board. */
        UNKNOWN_BOARD,
        /** What was given, or what the board reads, makes no sense. */
        NONSENSE,
        /** Something else has to come first. */
        NOT_NOW,
        /** Another calibration runs. */
        BUSY,
        /** A cell is on the channel. */
        TAKEN,
        /** The board is not there, or its channel reads no volts. */
        UNABLE
    }
}
