package org.ebbwatch.time;

/** What the length of a gap was measured with, from the best to the worst. */
public enum GapBasis {
    /** The board ran on and kept time itself: the gap is known exactly. */
    BOARD_CLOCK,
    /** The host ran on; good to the delay of delivery. */
    HOST_MONOTONIC,
    /** Board and host were both restarted; the host's wall clock was believed before and after. */
    HOST_WALL,
    /** Nothing measured it: only a lower bound is known. */
    NONE
}
