package org.ebbwatch.morning;

import static java.util.Objects.requireNonNull;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Optional;
import org.ebbwatch.alarm.book.NightHours;

/**
 * When the morning report is due: once a day, told by the wall clock of each moment anew. A report that was missed because nothing
 * ran is made up for on the same day; the first day of a service has one only if it began before the hour.
 *
 * @param at local time
 * @param zone whose local time
 */
public record MorningHour(LocalTime at, ZoneId zone) {
    public MorningHour {
        requireNonNull(at);
        requireNonNull(zone);
    }

    /**
     * The day whose report is due.
     *
     * @param last the last day that has its report
     * @param begunWallMillis when the service began
     */
    public Optional<LocalDate> due(long wallMillis, Optional<LocalDate> last, long begunWallMillis) {
        ZonedDateTime now = Instant.ofEpochMilli(wallMillis).atZone(zone);
        LocalDate today = now.toLocalDate();
        boolean isTime = !now.toLocalTime().isBefore(at);
        boolean begunBefore =
                begunWallMillis < today.atTime(at).atZone(zone).toInstant().toEpochMilli();
        boolean owed = last.map(day -> isNot(day, today)).orElse(begunBefore);
        return isTime && owed ? Optional.of(today) : Optional.empty();
    }

    /** The day after that of a moment. */
    public LocalDate tomorrow(long wallMillis) {
        return Instant.ofEpochMilli(wallMillis).atZone(zone).toLocalDate().plusDays(1);
    }

    /** A report of tomorrow tells of a clock that was set back a little, one of later on of a clock that was wrong then. */
    private static boolean isNot(LocalDate last, LocalDate today) {
        return last.isBefore(today) || last.isAfter(today.plusDays(1));
    }

    /** The evening before a moment: when the last night began; without a night, 24 h before. */
    public static long eveningBefore(NightHours night, long wallMillis) {
        ZonedDateTime now = Instant.ofEpochMilli(wallMillis).atZone(night.zone());
        if (night.from().equals(night.to())) {
            return now.minusDays(1).toInstant().toEpochMilli();
        }
        ZonedDateTime evening = now.toLocalDate().atTime(night.from()).atZone(night.zone());
        ZonedDateTime last = evening.isBefore(now)
                ? evening
                : now.toLocalDate().minusDays(1).atTime(night.from()).atZone(night.zone());
        return last.toInstant().toEpochMilli();
    }
}
