package org.ebbwatch.alarm.book;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import java.util.UUID;

/**
 * Why a condition stands, and where to read it up.
 *
 * @param line the finding, or the reason, in one line
 * @param passage the passage it was first seen on; empty where it is on none
 * @param tag the person's name for its cell, or empty
 * @param board the board's name, or empty
 * @param channel from 0; -1 where there is none
 * @param eventMillis event time of that board at which it began; the trace is read by it
 * @param journalSequence of the journal entry, readings counted, after which it was first told; 0 where there is none
 * @param simulatedSpeed 0 for a real board, else how fast the simulator ran
 */
public record Cause(
        String line,
        Optional<UUID> passage,
        String tag,
        String board,
        int channel,
        long eventMillis,
        long journalSequence,
        int simulatedSpeed) {
    public Cause {
        requireNonNull(line);
        requireNonNull(passage);
        requireNonNull(tag);
        requireNonNull(board);
    }

    /** A cause in the service itself, on no cell and no board. */
    public static Cause ofService(String line) {
        return new Cause(line, Optional.empty(), "", "", -1, 0, 0, 0);
    }

    /** A cause on a board as a whole. */
    public static Cause ofBoard(String board, long eventMillis, String line) {
        return new Cause(line, Optional.empty(), "", board, -1, eventMillis, 0, 0);
    }
}
