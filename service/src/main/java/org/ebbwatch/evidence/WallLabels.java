package org.ebbwatch.evidence;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;

/**
 * Labels moments of event time with wall time: the label of the last moment whose wall time was written down, and the event
 * time since, divided by the speed of a simulated board. Labels are for people; nothing is ordered or judged by them.
 */
final class WallLabels {
    private static final long LAST_MILLIS = 253_402_300_799_999L;
    private static final DateTimeFormatter RFC_3339 =
            DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSS'Z'").withZone(ZoneOffset.UTC);

    private final int speed;
    private long anchorEventMillis;
    private long anchorWallMillis;

    /** Labels from a passage's opening on; speed 0 and 1 are real time. */
    WallLabels(long eventMillis, long wallMillis, int speed) {
        this.speed = Math.max(1, speed);
        anchor(eventMillis, wallMillis);
    }

    /** From here on the wall time of this moment counts. */
    void anchor(long eventMillis, long wallMillis) {
        anchorEventMillis = eventMillis;
        anchorWallMillis = wallMillis;
    }

    /** Wall time of a moment, milliseconds since 1970. */
    long millis(long eventMillis) {
        return anchorWallMillis + Math.floorDiv(eventMillis - anchorEventMillis, (long) speed);
    }

    String text(long eventMillis) {
        return rfc3339(millis(eventMillis));
    }

    /** UTC with milliseconds and Z (RFC 3339); a host clock outside the years 1970 to 9999 gives the nearer end of them. */
    static String rfc3339(long wallMillis) {
        return RFC_3339.format(Instant.ofEpochMilli(Math.max(0, Math.min(LAST_MILLIS, wallMillis))));
    }
}
