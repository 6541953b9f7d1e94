package org.ebbwatch.time;

/** What an {@link EventClock} made of one scan. */
public sealed interface Arrival {

    /** The scan follows the one before. */
    record Next(long eventMillis) implements Arrival {}

    /**
     * Something is missing before this scan. {@code eventMillis} has moved on by the least length of the gap.
     *
     * @param rebooted the board was restarted in the gap
     */
    record AfterGap(long eventMillis, Gap gap, boolean rebooted) implements Arrival {}

    /** A repeated or late scan, not to be used. */
    record Dropped() implements Arrival {}
}
