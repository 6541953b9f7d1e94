package org.ebbwatch.alarm.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NightHoursTest {
    private static final ZoneId ZONE = ZoneId.of("Europe/Vienna");

    @ParameterizedTest
    @CsvSource({
        "22:00, 07:00, 2026-11-25T21:59:59, false",
        "22:00, 07:00, 2026-11-25T22:00:00, true",
        "22:00, 07:00, 2026-11-26T03:00:00, true",
        "22:00, 07:00, 2026-11-26T06:59:59, true",
        "22:00, 07:00, 2026-11-26T07:00:00, false",
        "22:00, 07:00, 2026-07-26T07:00:00, false",
        "00:30, 06:00, 2026-11-26T00:29:59, false",
        "00:30, 06:00, 2026-11-26T00:30:00, true",
        "00:30, 06:00, 2026-11-26T06:00:00, false",
        "08:00, 08:00, 2026-11-26T08:00:00, false",
        "08:00, 08:00, 2026-11-26T03:00:00, false",
    })
    void the_night_is_told_by_local_time(LocalTime from, LocalTime to, LocalDateTime local, boolean night) {
        long millis = local.atZone(ZONE).toInstant().toEpochMilli();

        assertThat(new NightHours(from, to, ZONE).isNight(millis)).isEqualTo(night);
    }

    /** Summer time in Vienna begins on 2027-03-28 and ends on 2027-10-31: nights of 8 and of 10 hours. */
    @ParameterizedTest
    @CsvSource({
        "2027-03-27T12:00:00Z, 8",
        "2027-03-28T12:00:00Z, 9",
        "2027-10-30T12:00:00Z, 10",
        "2027-10-31T12:00:00Z, 9",
    })
    void a_night_in_which_the_clocks_change_is_one_night(Instant noon, int hours) {
        var night = new NightHours(LocalTime.of(22, 0), LocalTime.of(7, 0), ZONE);
        int minutes = 0;
        int begun = 0;
        for (int minute = 1; minute <= 24 * 60; minute++) {
            long millis = noon.toEpochMilli() + minute * 60_000L;
            minutes += night.isNight(millis) ? 1 : 0;
            begun += night.isNight(millis) && !night.isNight(millis - 60_000) ? 1 : 0;
        }
        assertThat(begun).isEqualTo(1);
        assertThat(minutes).isEqualTo(60 * hours);
    }
}
