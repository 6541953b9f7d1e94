package org.ebbwatch.rig.message;

/**
 * Asks a board for another time between scans. The record holds any u32, so that a board can receive and refuse what lies
 * outside {@link #LEAST_MILLIS} to {@link #MOST_MILLIS}.
 *
 * @param millis event time between scans, milliseconds, u32
 */
public record SetInterval(long millis) implements HostMessage {
    /** Shortest interval a board may be asked for, milliseconds. */
    public static final long LEAST_MILLIS = 10;
    /** Longest interval a board may be asked for, milliseconds. */
    public static final long MOST_MILLIS = 60_000;

    public SetInterval {
        Bounds.u32("millis", millis);
    }

    /** Whether a board may grant this interval at all. */
    public boolean isAllowed() {
        return millis >= LEAST_MILLIS && millis <= MOST_MILLIS;
    }

    @Override
    public Kind kind() {
        return Kind.SET_INTERVAL;
    }
}
