package org.ebbwatch.acquire;

import org.ebbwatch.time.HostTime;

/**
 * Host time that counts only while the host was there to look. Every deadline of a session runs on it.
 *
 * <p>Between two looks at the port at most {@value #MOST_MILLIS_PER_LOOK} ms are counted, however long the machine was busy,
 * paused or asleep: what a board sent in the meantime is still in the port's buffer and is read before the next look counts.
 * A silence of a second is therefore found only after several looks that found nothing, never because of one long pause.
 */
final class AttendedTime {

    private static final long MOST_MILLIS_PER_LOOK = 250;
    private static final long MOST_NANOS_PER_LOOK = MOST_MILLIS_PER_LOOK * 1_000_000;

    private HostTime looked;
    private long nanos;

    void look(HostTime now) {
        if (looked != null) {
            long passed = now.monotonicNanos() - looked.monotonicNanos();
            nanos += Math.max(0, Math.min(passed, MOST_NANOS_PER_LOOK));
        }
        looked = now;
    }

    /** Attended milliseconds since the first look. */
    long millis() {
        return nanos / 1_000_000;
    }
}
