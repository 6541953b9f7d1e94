package org.ebbwatch.passage;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Phase;

/** How a person's request ended. Whatever is no {@link Done} has changed nothing. */
public sealed interface DeskAnswer {

    /**
     * Done.
     *
     * @param receipt what came of it; the same whenever it is asked again with the same key
     * @param onDisk whether it would outlive a power cut by now; false while storage is away
     */
    record Done(Receipt receipt, boolean onDisk) implements DeskAnswer {}

    /** There is no such passage. */
    record UnknownPassage(UUID passage) implements DeskAnswer {}

    /** There is no such board. */
    record UnknownBoard(String board, List<String> boards) implements DeskAnswer {}

    /**
     * The channel cannot serve this cell.
     *
     * @param why in one sentence
     * @param fit the channels of the board that could, free or not
     */
    record UnfitChannel(String board, int channel, String why, List<Integer> fit) implements DeskAnswer {}

    /**
     * What was written down of the cell before keeps it off the rack.
     *
     * @param why and what to do, in sentences
     */
    record NotAdmitted(String tag, String why) implements DeskAnswer {}

    /** Another passage is in the way: on the channel, or with the same tag. */
    record Taken(String what, UUID by, String tag) implements DeskAnswer {}

    /** The board cannot be reached, or cannot do it. */
    record Unable(String board, String why) implements DeskAnswer {}

    /** The passage has changed since the person looked. */
    record Stale(UUID passage, long seen, long current) implements DeskAnswer {}

    /**
     * The passage does not allow it now.
     *
     * @param request what was asked for
     * @param allowed what the phase allows instead
     * @param why in one sentence
     */
    record NotNow(Phase phase, String request, Set<Act> allowed, String why) implements DeskAnswer {}

    /** The key was used before, for another request. */
    record KeyUsed(String key) implements DeskAnswer {}
}
