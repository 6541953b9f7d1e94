package org.ebbwatch.alarm.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.alarm.book.AlarmKind.HOT;
import static org.ebbwatch.alarm.book.AlarmKind.STALLED;
import static org.ebbwatch.alarm.book.AlarmKind.WARMING;
import static org.ebbwatch.alarm.book.BookBench.HOUR;

import java.time.Duration;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.ebbwatch.judge.FindingKind.Urgency;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** It is noon at the beginning. */
class RoutingTest {
    private static final long MINUTE = 60_000;
    private static final Route DANGER = new Route(Urgency.DANGER, Optional.empty(), Optional.empty());
    private static final Route MORNINGS = hours(8, 12);
    private static final Route AFTER_TEN_MINUTES =
            new Route(Urgency.RINGING, Optional.empty(), Optional.of(Duration.ofMinutes(10)));

    private final RoutingBench rack = new RoutingBench();
    private final BookBench bench = rack.bench;

    private static Route hours(int from, int to) {
        return new Route(
                Urgency.ADVISORY,
                Optional.of(new LocalHours(LocalTime.of(from, 0), LocalTime.of(to, 0), ZoneOffset.UTC)),
                Optional.empty());
    }

    @Test
    void each_outlet_is_told_from_its_urgency_up_in_the_order_of_the_outlets() {
        rack.with("all", Route.ALL).with("danger", DANGER);
        rack.report(bench.standing(0, WARMING, STALLED));
        rack.report(bench.standing(0, WARMING, STALLED, HOT));

        assertThat(rack.told())
                .containsExactlyInAnyOrder(
                        "all RAISED WARMING", "all RAISED STALLED", "all RAISED HOT", "danger RAISED HOT")
                .endsWith("all RAISED HOT", "danger RAISED HOT");
    }

    @Test
    void whoever_was_told_of_an_alarm_is_told_of_its_further_steps_and_nobody_else() {
        rack.with("all", Route.ALL).with("danger", DANGER);
        rack.report(bench.standing(0, WARMING));
        rack.acknowledge(WARMING);
        rack.report(bench.over(0));

        assertThat(rack.told())
                .containsExactly("all RAISED WARMING", "all ACKNOWLEDGED WARMING", "all RETURNED WARMING");
    }

    @Nested
    class Hours {

        @Test
        void what_is_raised_outside_them_is_told_when_they_begin() {
            rack.with("mornings", MORNINGS);
            rack.report(bench.standing(0, WARMING));
            rack.pass(20 * HOUR - 1);
            assertThat(rack.told()).isEmpty();

            rack.pass(1);
            assertThat(rack.told()).containsExactly("mornings TOLD WARMING");
            assertThat(rack.tellings.get(0).rings()).isTrue();
        }

        @Test
        void danger_is_told_at_any_hour() {
            rack.with("mornings", MORNINGS);
            rack.report(bench.standing(0, HOT));

            assertThat(rack.told()).containsExactly("mornings RAISED HOT");
        }

        @Test
        void what_somebody_knows_of_or_is_gone_by_then_is_not_told() {
            rack.with("mornings", MORNINGS);
            rack.report(bench.standing(0, WARMING), bench.standing(1, AlarmKind.SENSOR_FAULT));
            rack.acknowledge(WARMING);
            rack.report(bench.standing(1));
            rack.pass(20 * HOUR);

            assertThat(rack.told()).isEmpty();
        }

        @Test
        void what_is_shelved_waits_until_it_is_in_view_again() {
            rack.with("mornings", MORNINGS);
            rack.report(bench.standing(0, WARMING));
            rack.follow(List.of(bench.done(bench.book.shelve(
                    bench.of(WARMING).id(), "Ben", "a fan comes", Duration.ofHours(22), bench.now()))));
            rack.pass(20 * HOUR);
            assertThat(rack.told()).isEmpty();

            rack.pass(2 * HOUR);
            assertThat(rack.told()).as("at ten in the morning").containsExactly("mornings SHELVING_ENDED WARMING");
        }

        @ParameterizedTest
        @CsvSource({"8, 17, 8, true", "8, 17, 17, false", "22, 7, 23, true", "22, 7, 6, true", "22, 7, 7, false"})
        void begin_included_and_end_before_the_last(int from, int to, int hour, boolean included) {
            LocalHours hours = hours(from, to).hours().orElseThrow();
            assertThat(hours.include(BookBench.NOON + (hour - 12) * HOUR)).isEqualTo(included);
        }
    }

    @Nested
    class Escalation {
        private void warming() {
            rack.with("Ben", Route.ALL).with("Anna", AFTER_TEN_MINUTES);
            rack.report(bench.standing(0, WARMING));
        }

        @Test
        void a_second_person_is_told_once_of_what_nobody_acknowledged_in_time() {
            warming();
            rack.pass(10 * MINUTE - 1);
            assertThat(rack.told()).containsExactly("Ben RAISED WARMING");

            rack.pass(1);
            rack.pass(HOUR);
            assertThat(rack.told()).containsExactly("Ben RAISED WARMING", "Anna ESCALATED WARMING");
            assertThat(rack.tellings.get(1).rings()).isTrue();
            assertThat(rack.tellings.get(1).alarm()).isEqualTo(bench.of(WARMING));
        }

        @Test
        void the_alarm_makes_no_step_by_it_so_that_what_the_first_was_told_still_holds() {
            warming();
            rack.pass(10 * MINUTE);
            assertThat(bench.of(WARMING).steps()).isEqualTo(1);
        }

        @Test
        void the_second_person_is_told_how_it_goes_on() {
            warming();
            rack.pass(10 * MINUTE);
            rack.acknowledge(WARMING);
            assertThat(rack.told()).endsWith("Ben ACKNOWLEDGED WARMING", "Anna ACKNOWLEDGED WARMING");
        }

        @Test
        void what_is_acknowledged_in_time_is_not_escalated() {
            warming();
            rack.pass(9 * MINUTE);
            rack.acknowledge(WARMING);
            rack.pass(HOUR);
            assertThat(rack.told()).noneMatch(told -> told.startsWith("Anna"));
        }

        @Test
        void when_it_comes_again_after_somebody_acknowledged_the_time_begins_anew() {
            rack.with("Anna", new Route(Urgency.ADVISORY, Optional.empty(), Optional.of(Duration.ofMinutes(10))));
            rack.report(bench.standing(0, HOT));
            rack.acknowledge(HOT);
            rack.report(bench.standing(0));
            rack.pass(HOUR);
            rack.report(bench.standing(0, HOT));
            rack.pass(10 * MINUTE - 1);
            assertThat(rack.told()).isEmpty();
            rack.pass(1);
            assertThat(rack.told()).containsExactly("Anna ESCALATED HOT");
        }

        @Test
        void what_is_gone_by_itself_is_not_escalated_unless_it_is_latched() {
            rack.with("Anna", AFTER_TEN_MINUTES);
            rack.report(bench.standing(0, WARMING), bench.standing(1, HOT));
            rack.report(bench.standing(0), bench.standing(1));
            rack.pass(2 * MINUTE);
            rack.pass(HOUR);
            assertThat(rack.told()).containsExactly("Anna ESCALATED HOT");
        }

        @Test
        void an_advisory_alarm_of_the_night_is_counted_from_the_morning_on() {
            rack.with("Anna", new Route(Urgency.ADVISORY, Optional.empty(), Optional.of(Duration.ofMinutes(10))));
            rack.pass(14 * HOUR);
            rack.report(bench.standing(0, STALLED));
            rack.pass(5 * HOUR);
            rack.pass(10 * MINUTE - 1);
            assertThat(rack.told()).isEmpty();
            rack.pass(1);
            assertThat(rack.told()).containsExactly("Anna ESCALATED STALLED");
        }

        @Test
        void the_time_goes_on_over_a_restart() {
            warming();
            rack.pass(4 * MINUTE);
            rack.restart(3 * MINUTE);
            rack.pass(3 * MINUTE - 1);
            assertThat(rack.told()).containsExactly("Ben RAISED WARMING");
            rack.pass(1);
            assertThat(rack.told()).containsExactly("Ben RAISED WARMING", "Anna ESCALATED WARMING");
            rack.restart(HOUR);
            rack.pass(HOUR);
            assertThat(rack.told()).as("nobody is told twice").hasSize(2);
        }

        @Test
        void a_wall_clock_that_goes_back_over_a_restart_ends_the_time() {
            warming();
            rack.restart(-HOUR);
            rack.pass(1);
            assertThat(rack.told()).endsWith("Anna ESCALATED WARMING");
        }

        @Test
        void a_wall_clock_that_steps_while_the_service_runs_changes_nothing() {
            warming();
            bench.wallMillis += 5 * HOUR;
            rack.pass(9 * MINUTE);
            assertThat(rack.told()).containsExactly("Ben RAISED WARMING");
        }
    }

    @Test
    void an_outlet_that_is_new_is_told_of_what_still_asks_for_somebody() {
        rack.report(bench.standing(0, WARMING), bench.standing(1, HOT));
        rack.acknowledge(HOT);
        rack.with("new", Route.ALL);
        rack.restart(HOUR);
        rack.pass(1);
        assertThat(rack.told()).containsExactly("new TOLD WARMING");
    }
}
