package org.ebbwatch.passage;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import java.util.UUID;

/**
 * Something that happened on a rack and that a page should know of at once.
 *
 * @param kind which sort of thing
 * @param board the board it happened on
 * @param passage whose; empty where it is about the board
 * @param tag of that passage's cell; empty where there is none
 * @param channel that passage is on, from 0; -1 where there is none
 * @param eventMillis event time; -1 where the board was not heard yet
 * @param alarm which alarm; empty where it is about none
 * @param sequence of that alarm, else of the entry of that passage's journal, by which it can be acted on next; 0 where there is
 *     none
 * @param what the phase, the finding kind, the act, what is asked for, the state of the link or the alarm's step
 * @param line in words; may be empty
 */
public record Happening(
        Kind kind,
        String board,
        Optional<UUID> passage,
        String tag,
        int channel,
        long eventMillis,
        Optional<UUID> alarm,
        long sequence,
        String what,
        String line) {

    /** Which sort of thing happened. */
    public enum Kind {
        /** A cell was checked in. */
        OPENED,
        /** A passage went to another phase. */
        PHASE,
        /** A finding was raised. */
        RAISED,
        /** A finding no longer stands. */
        CLEARED,
        /** A person is asked to do something. */
        ASKED,
        /** A person did, said or measured something. */
        DONE,
        /** A load put on by hand seems to be where nobody said, or no longer does. */
        SEEMS,
        /** The link to a board changed. */
        LINK,
        /** An alarm made a step. */
        ALARM
    }

    public Happening {
        requireNonNull(kind);
        requireNonNull(board);
        requireNonNull(passage);
        requireNonNull(tag);
        requireNonNull(alarm);
        requireNonNull(what);
        requireNonNull(line);
    }

    /** Something that is about no alarm. */
    public Happening(
            Kind kind,
            String board,
            Optional<UUID> passage,
            String tag,
            int channel,
            long eventMillis,
            long sequence,
            String what,
            String line) {
        this(kind, board, passage, tag, channel, eventMillis, Optional.empty(), sequence, what, line);
    }
}
