package org.ebbwatch.morning;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ebbwatch.alarm.book.NightHours;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MorningHourTest {
    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
    private static final MorningHour SEVEN = new MorningHour(LocalTime.of(7, 0), BERLIN);
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    private static long at(String text) {
        return Instant.parse(text).toEpochMilli();
    }

    private static Optional<LocalDate> due(String now, Optional<LocalDate> last, String begun) {
        return SEVEN.due(at(now), last, at(begun));
    }

    @Test
    void it_is_due_at_its_hour_and_once_a_day() {
        Optional<LocalDate> yesterday = Optional.of(TODAY.minusDays(1));

        assertThat(due("2026-11-25T05:59:59Z", yesterday, "2026-11-20T00:00:00Z"))
                .isEmpty();
        assertThat(due("2026-11-25T06:00:00Z", yesterday, "2026-11-20T00:00:00Z"))
                .contains(TODAY);
        assertThat(due("2026-11-25T06:00:01Z", Optional.of(TODAY), "2026-11-20T00:00:00Z"))
                .isEmpty();
    }

    @Test
    void one_that_was_missed_is_made_up_for_on_the_same_day() {
        assertThat(due("2026-11-25T15:00:00Z", Optional.of(TODAY.minusDays(3)), "2026-11-25T14:59:00Z"))
                .contains(TODAY);
    }

    @Test
    void a_service_that_first_begins_after_the_hour_has_none_on_that_day() {
        assertThat(due("2026-11-25T15:00:00Z", Optional.empty(), "2026-11-25T14:59:00Z"))
                .isEmpty();
        assertThat(due("2026-11-26T06:00:00Z", Optional.empty(), "2026-11-25T14:59:00Z"))
                .contains(TODAY.plusDays(1));
    }

    @Test
    void a_wall_clock_that_goes_back_sends_none_twice() {
        assertThat(due("2026-11-24T06:30:00Z", Optional.of(TODAY), "2026-11-20T00:00:00Z"))
                .isEmpty();
    }

    @Test
    void a_wall_clock_that_was_a_year_ahead_for_a_while_does_not_cost_a_year_of_reports() {
        assertThat(due("2026-11-25T06:30:00Z", Optional.of(TODAY.plusYears(1)), "2026-11-20T00:00:00Z"))
                .contains(TODAY);
    }

    /** Summer time in Berlin begins on 2027-03-28 and ends on 2027-10-31 (last Sundays of March and October). */
    @ParameterizedTest
    @CsvSource({"07:00", "02:30", "00:00", "23:50"})
    void every_day_of_a_year_has_one_report_whatever_is_done_to_its_hours(LocalTime hour) {
        var morning = new MorningHour(hour, BERLIN);
        long begun = at("2026-12-01T00:00:00Z");
        List<LocalDate> sent = new ArrayList<>(List.of(LocalDate.of(2026, 12, 31)));
        for (long now = at("2026-12-31T23:00:00Z"); now < at("2027-12-31T23:00:00Z"); now += 600_000) {
            morning.due(now, Optional.of(sent.get(sent.size() - 1)), begun).ifPresent(sent::add);
        }
        assertThat(sent).doesNotHaveDuplicates().hasSize(366);
    }

    /** Central European summer time ended on 2026-10-25 (by the rule of the last Sunday of October). */
    @ParameterizedTest
    @CsvSource({
        "22:00, 07:00, 2026-11-25T06:00:00Z, 2026-11-24T21:00:00Z",
        "22:00, 07:00, 2026-11-25T20:30:00Z, 2026-11-24T21:00:00Z",
        "22:00, 07:00, 2026-11-25T21:30:00Z, 2026-11-25T21:00:00Z",
        "22:00, 07:00, 2026-10-25T06:00:00Z, 2026-10-24T20:00:00Z",
        "07:00, 07:00, 2026-11-25T06:00:00Z, 2026-11-24T06:00:00Z",
    })
    void the_evening_is_when_the_last_night_began(LocalTime from, LocalTime to, String now, String evening) {
        assertThat(MorningHour.eveningBefore(new NightHours(from, to, BERLIN), at(now)))
                .isEqualTo(at(evening));
    }
}
