package org.ebbwatch.night;

import java.util.Locale;

/**
 * Something the judge did that it should not have.
 *
 * @param kind what sort of wrong
 * @param what the finding or rule concerned
 * @param trouble what had gone wrong on the channel or board by then
 * @param seed of the night, with which it can be seen again
 * @param channel 0 the troubled one, 1 the sound one
 * @param hours of event time
 * @param line what the judge said, and the truth
 */
record Blot(Kind kind, String what, Trouble trouble, long seed, int channel, double hours, String line) {
    enum Kind {
        /** Released although it would rest above the limit. */
        WRONG_RELEASE,
        /** A lock did not hold. */
        LOCK_BROKEN,
        /** A finding was due and did not come. */
        MISSED,
        /** A finding was found, went, and did not come again though it was still due. */
        LOST_AGAIN,
        /** Cells changed places in a silence and the passage was not held. */
        UNNOTICED,
        /** A lead that was off with the load off was found only hours later. */
        LATE,
        /** A finding came without a reason in the truth. */
        FALSE,
        /** A sound cell was held for no reason in the truth. */
        FALSE_HOLD
    }

    /** What is counted as one. */
    String key() {
        return kind.name().replace('_', ' ').toLowerCase(Locale.ROOT) + ": " + what;
    }
}
