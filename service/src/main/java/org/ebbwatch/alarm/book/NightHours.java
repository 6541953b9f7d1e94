package org.ebbwatch.alarm.book;

import static java.util.Objects.requireNonNull;

import java.time.LocalTime;
import java.time.ZoneId;

/**
 * The hours in which work that can wait rings nobody awake. Told by the wall clock of each moment anew, so that a wall clock
 * that steps can never leave an alarm waiting for a time that has gone by.
 *
 * @param from the night begins at this time, included
 * @param to it ends at this time, not included; the same as {@code from}: there is no night
 * @param zone whose local time
 */
public record NightHours(LocalTime from, LocalTime to, ZoneId zone) {
    public NightHours {
        requireNonNull(from);
        requireNonNull(to);
        requireNonNull(zone);
    }

    /** Ten in the evening to seven in the morning (common practice, no source). */
    public static NightHours usual(ZoneId zone) {
        return new NightHours(LocalTime.of(22, 0), LocalTime.of(7, 0), zone);
    }

    /** Whether it is night. */
    public boolean isNight(long wallMillis) {
        return new LocalHours(from, to, zone).include(wallMillis);
    }
}
