package org.ebbwatch.sim.link;

/**
 * When a board's next scan is due on the host's monotonic clock. A board that falls behind, waiting for credit or for the
 * machine, catches up by at most a quarter of a second of host time; more than that is let go.
 */
final class Pace {
    private static final long BEHIND_MOST_NANOS = 250_000_000;

    private final double nanosPerEventMilli;
    private long dueNanos;

    /**
     * @param speed event seconds per host second
     * @param nowNanos host time at which the first scan's interval begins
     */
    Pace(int speed, long nowNanos) {
        nanosPerEventMilli = 1e6 / speed;
        dueNanos = nowNanos;
    }

    /** Host time until a scan after this interval is due, nanoseconds; 0 or less: it is. */
    long nanosUntil(long intervalMillis, long nowNanos) {
        long behind = nowNanos - nextNanos(intervalMillis);
        if (behind > BEHIND_MOST_NANOS) {
            dueNanos += behind - BEHIND_MOST_NANOS;
        }
        return nextNanos(intervalMillis) - nowNanos;
    }

    private long nextNanos(long intervalMillis) {
        return dueNanos + (long) (intervalMillis * nanosPerEventMilli);
    }

    /** A scan of this interval was made. */
    void stepped(long intervalMillis) {
        dueNanos = nextNanos(intervalMillis);
    }
}
