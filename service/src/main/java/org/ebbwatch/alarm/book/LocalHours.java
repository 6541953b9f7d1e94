package org.ebbwatch.alarm.book;

import static java.util.Objects.requireNonNull;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;

/**
 * A stretch of every day, told by the wall clock of each moment anew.
 *
 * @param from it begins at this local time, included
 * @param to it ends at this, not included; before {@code from}: on the day after; the same: it is empty
 * @param zone whose local time
 */
public record LocalHours(LocalTime from, LocalTime to, ZoneId zone) {
    public LocalHours {
        requireNonNull(from);
        requireNonNull(to);
        requireNonNull(zone);
    }

    /** Whether that moment lies in it. */
    public boolean include(long wallMillis) {
        LocalTime time = Instant.ofEpochMilli(wallMillis).atZone(zone).toLocalTime();
        boolean afterFrom = !time.isBefore(from);
        boolean beforeTo = time.isBefore(to);
        return from.isAfter(to) ? afterFrom || beforeTo : afterFrom && beforeTo;
    }
}
