package org.ebbwatch.passage;

import static java.util.Objects.requireNonNull;

/**
 * A contact wired to a board.
 *
 * @param input which of the board's contact inputs, from 0 to 7
 * @param means what it says when it is not as it is normally
 * @param normallyClosed whether it is closed while all is well, so that a broken wire speaks up too
 */
public record ContactInput(int input, Means means, boolean normallyClosed) {
    /** The highest number of an input. */
    public static final int HIGHEST_INPUT = 7;

    /** What a contact can say. */
    public enum Means {
        /** A smoke detector trips. */
        SMOKE,
        /** The mains are gone. */
        MAINS_LOST
    }

    public ContactInput {
        requireNonNull(means);
        if (input < 0 || input > HIGHEST_INPUT) {
            throw new IllegalArgumentException("inputs are 0 to " + HIGHEST_INPUT + ", not " + input);
        }
    }

    /** Whether it speaks up in a scan with these contacts, bit n for a closed input n. */
    boolean isTripped(int contacts) {
        boolean closed = (contacts & 1 << input) != 0;
        return closed != normallyClosed;
    }
}
