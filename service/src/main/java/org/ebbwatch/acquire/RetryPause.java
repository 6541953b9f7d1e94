package org.ebbwatch.acquire;

/**
 * How long to wait before a port is opened again. A port that cannot be opened is tried every half second, so that a
 * board plugged in again is heard within two seconds: trying disturbs nothing. A port that opens, but is lost before a board has proven
 * who it is, is opened ever more seldom, for opening it resets many boards.
 */
final class RetryPause {
    private static final long FIRST_MILLIS = 500;
    private static final long LONGEST_MILLIS = 10_000;

    /** How an attempt ended. */
    enum Attempt {
        /** The port could not be opened. */
        NOT_OPENED,
        /** It was lost, or closed because of a fault, before a board had proven who it is. */
        UNPROVEN,
        /** It was lost after that. */
        PROVEN
    }

    private long unprovenMillis = FIRST_MILLIS;

    /** The pause after an attempt that ended so, in milliseconds. */
    long after(Attempt attempt) {
        return switch (attempt) {
            case NOT_OPENED -> FIRST_MILLIS;
            case UNPROVEN -> {
                long pause = unprovenMillis;
                unprovenMillis = Math.min(LONGEST_MILLIS, 2 * pause);
                yield pause;
            }
            case PROVEN -> {
                unprovenMillis = FIRST_MILLIS;
                yield FIRST_MILLIS;
            }
        };
    }
}
