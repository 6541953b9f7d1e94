package org.ebbwatch.plan;

import static java.util.Objects.requireNonNull;

import java.util.UUID;

/**
 * The next thing a passage needs a person for.
 *
 * @param passage whose
 * @param tag of its cell
 * @param board the board it is on
 * @param channel the channel it is on, from 0
 * @param task what is to be done
 * @param waitsAlready whether it can be done now
 * @param earliestEventMillis event time before which it cannot be done
 * @param earliestWallMillis the same by the wall clock, as far as the board keeps going
 * @param canWait whether nothing gets worse until the morning
 * @param dueWallMillis when a person is asked to come: the earliest moment, but never at night for what can wait
 * @param why in one sentence
 */
public record Errand(
        UUID passage,
        String tag,
        String board,
        int channel,
        Task task,
        boolean waitsAlready,
        long earliestEventMillis,
        long earliestWallMillis,
        boolean canWait,
        long dueWallMillis,
        String why) {
    public Errand {
        requireNonNull(passage);
        requireNonNull(tag);
        requireNonNull(board);
        requireNonNull(task);
        requireNonNull(why);
    }
}
