package org.ebbwatch.profile.modbus;

/**
 * Opens the loads when the host has not said for ten seconds that it lives. It guards against a service that is stuck or blind,
 * not against one that has ended: nothing on this machine can. Times are nanoseconds of the host's monotonic clock. Pure.
 */
final class HostGuard {
    private static final long LONGEST_NANOS = 10_000_000_000L;

    private long heardNanos;
    private boolean lost;

    HostGuard(long nowNanos) {
        heardNanos = nowNanos;
    }

    /** The host said that it lives. */
    void heard(long nowNanos) {
        heardNanos = nowNanos;
        lost = false;
    }

    /** True once when the host is found lost. */
    boolean findsLost(long nowNanos) {
        if (lost || nowNanos - heardNanos < LONGEST_NANOS) {
            return false;
        }
        lost = true;
        return true;
    }

    /** Whether the host is lost; no load may close then. */
    boolean isLost() {
        return lost;
    }
}
