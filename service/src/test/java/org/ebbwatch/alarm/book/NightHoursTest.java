package org.ebbwatch.alarm.book;

import static org.assertj.core.api.Assertions.assertThat;

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
}
