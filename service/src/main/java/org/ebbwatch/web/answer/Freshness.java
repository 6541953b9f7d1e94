package org.ebbwatch.web.answer;

import jakarta.inject.Singleton;
import java.util.HashMap;
import java.util.Map;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.passage.RackView.BoardView;
import org.ebbwatch.time.HostTime;

/**
 * How old a board's last scan is, in seconds of the host.
 *
 * <p>A scan carries the wall time of its arrival, and wall time may step: back, and a silent board would look fresh. So the
 * age is the longer of two: by the wall clock since the arrival, and by the monotonic clock since this scan was first seen
 * here. A step forward makes a board look old until its next scan, which is the safe side.
 *
 * <p>Safe for use by several threads.
 */
@Singleton
public final class Freshness {
    /** A board whose last scan is older is stale: three intervals of the longest that may run unattended, 2 s each. */
    public static final int STALE_AFTER_SECONDS = 6;

    private final HostClock clock;
    private final Map<String, Seen> seen = new HashMap<>();

    Freshness(HostClock clock) {
        this.clock = clock;
    }

    /** Seconds since the board's last scan arrived; NaN before the first. */
    public synchronized double ageSeconds(BoardView board) {
        if (board.eventMillis() < 0) {
            return Double.NaN;
        }
        HostTime now = clock.now();
        long nanos = now.monotonicNanos();
        Seen last = seen.get(board.name());
        if (last == null || last.eventMillis != board.eventMillis() || last.wallMillis != board.wallMillis()) {
            last = new Seen(board.eventMillis(), board.wallMillis(), nanos);
            seen.put(board.name(), last);
        }
        double byWall = (now.wallMillis() - board.wallMillis()) / 1e3;
        double byMonotonic = (nanos - last.sinceNanos) / 1e9;
        return Math.max(byWall, byMonotonic);
    }

    /** Whether what is known of the board must not be taken for what is: no link, no scan yet, or too old a scan. */
    public boolean isStale(BoardView board) {
        return board.link() != LinkState.CONNECTED || !(ageSeconds(board) <= STALE_AFTER_SECONDS);
    }

    private record Seen(long eventMillis, long wallMillis, long sinceNanos) {}
}
