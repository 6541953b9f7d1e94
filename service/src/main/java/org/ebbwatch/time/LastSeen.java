package org.ebbwatch.time;

import java.util.Objects;

/**
 * The last scan a clock accepted: all that must be kept over a restart of the service so that event time goes on and the gap
 * is measured as well as can be.
 *
 * @param eventMillis event time of the scan
 * @param bootNumber the board's boot number, 0 where the board cannot count
 * @param boardMillis the board's own milliseconds, 0 to 2^32 - 1
 * @param scan the scan's number, 0 to 2^32 - 1
 * @param host when it arrived
 */
public record LastSeen(long eventMillis, long bootNumber, long boardMillis, long scan, HostTime host) {

    public LastSeen {
        Objects.requireNonNull(host, "host");
    }
}
