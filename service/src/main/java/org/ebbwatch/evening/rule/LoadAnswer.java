package org.ebbwatch.evening.rule;

import static java.util.Objects.requireNonNull;

/**
 * What a load answered to a short opening.
 *
 * @param seen in words, with figures
 */
public record LoadAnswer(Kind kind, String seen) {

    /** How it answered. */
    public enum Kind {
        /** It opened, the cell came up, it closed again, the cell went down. */
        ANSWERS,
        /** A short opening would not stand out of the channel's noise; it was not opened. */
        TOO_FAINT,
        /** The board keeps it on though it was asked to open it. */
        STAYS_ON,
        /** The board says that it opened, and the cell does not answer: it conducts all the same, or never drew. */
        NO_RESPONSE,
        /** It opened, and does not close again. */
        STAYS_OPEN,
        /** It closed again, and the cell does not go down. */
        DRAWS_NO_MORE,
        /** Readings are missing in the middle of it. */
        INTERRUPTED
    }

    public LoadAnswer {
        requireNonNull(kind);
        requireNonNull(seen);
    }
}
