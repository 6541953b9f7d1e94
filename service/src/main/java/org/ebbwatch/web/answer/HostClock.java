package org.ebbwatch.web.answer;

/** The host's clocks. The wall clock labels; the monotonic one measures how long nothing has come. */
public interface HostClock {
    /** Milliseconds since 1970-01-01T00:00Z; may step. */
    long wallMillis();

    /** Nanoseconds from an origin that means nothing; never steps. */
    long monotonicNanos();
}
