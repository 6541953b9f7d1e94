package org.ebbwatch.alarm.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.alarm.book.AlarmKind.HOT;
import static org.ebbwatch.alarm.book.AlarmKind.SENSOR_FAULT;
import static org.ebbwatch.alarm.book.AlarmKind.WARMING;
import static org.ebbwatch.alarm.book.AlarmState.LATCHED_ACKNOWLEDGED;
import static org.ebbwatch.alarm.book.AlarmState.LATCHED_UNACKNOWLEDGED;
import static org.ebbwatch.alarm.book.AlarmState.NORMAL;
import static org.ebbwatch.alarm.book.AlarmState.RETURNED_UNACKNOWLEDGED;
import static org.ebbwatch.alarm.book.AlarmState.UNACKNOWLEDGED;
import static org.ebbwatch.alarm.book.BookBench.ANNA;
import static org.ebbwatch.alarm.book.BookBench.HOUR;

import java.time.Duration;
import java.util.List;
import java.util.UUID;
import org.ebbwatch.alarm.book.AlarmAnswer.Refused;
import org.ebbwatch.alarm.book.AlarmAnswer.Why;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What people may ask of the book, and what they may not. */
class AlarmBookPeopleTest {
    private final BookBench bench = new BookBench();

    @Nested
    class A_latched_alarm {

        @ParameterizedTest
        @EnumSource(
                value = AlarmKind.class,
                names = {"HOT", "REVERSED", "LOAD_HOT"})
        void stays_until_it_was_acknowledged_and_reset(AlarmKind kind) {
            bench.report(bench.standing(0, kind));
            bench.report(bench.standing(0));
            bench.pass(HOUR);
            assertThat(bench.only().state()).isEqualTo(LATCHED_UNACKNOWLEDGED);
            assertThat(BookBench.refused(bench.book.reset(bench.only().id(), ANNA, bench.now())))
                    .isEqualTo(Why.NOT_NOW);

            bench.acknowledge(bench.only());
            assertThat(bench.only().state()).isEqualTo(LATCHED_ACKNOWLEDGED);

            AlarmEvent reset = bench.done(bench.book.reset(bench.only().id(), ANNA, bench.now()));
            assertThat(reset.alarm().state()).isEqualTo(NORMAL);
            assertThat(bench.book.alive()).isEmpty();
        }

        @Test
        void cannot_be_reset_while_its_condition_stands() {
            bench.report(bench.standing(0, HOT));
            bench.acknowledge(bench.only());

            assertThat(BookBench.refused(bench.book.reset(bench.only().id(), ANNA, bench.now())))
                    .isEqualTo(Why.NOT_NOW);
        }

        @Test
        void outlives_its_passage() {
            bench.report(bench.standing(0, HOT));
            bench.acknowledge(bench.only());
            bench.report(bench.over(0));

            assertThat(bench.only().state()).isEqualTo(LATCHED_ACKNOWLEDGED);
        }
    }

    @Nested
    class An_alarm_put_away {

        private Alarm shelved(AlarmKind kind, long hours) {
            bench.report(bench.standing(0, kind));
            return bench.done(bench.book.shelve(
                            bench.only().id(), ANNA, "fan is on its way", Duration.ofHours(hours), bench.now()))
                    .alarm();
        }

        @Test
        void rings_again_when_its_time_is_over_and_the_condition_still_stands() {
            bench.report(bench.standing(0, WARMING));
            bench.acknowledge(bench.only());
            bench.done(
                    bench.book.shelve(bench.only().id(), ANNA, "fan is on its way", Duration.ofHours(2), bench.now()));

            assertThat(bench.pass(2 * HOUR - 1)).isEmpty();
            List<AlarmEvent> ended = bench.pass(1);

            assertThat(ended).extracting(AlarmEvent::step).containsExactly(AlarmStep.SHELVING_ENDED);
            assertThat(ended.get(0).rings()).isTrue();
            assertThat(bench.only().state()).isEqualTo(UNACKNOWLEDGED);
            assertThat(bench.only().putAway()).isEmpty();
        }

        @Test
        void keeps_what_nobody_acknowledged() {
            shelved(WARMING, 2);
            bench.report(bench.standing(0));
            bench.pass(HOUR);
            assertThat(bench.only().cover()).isEqualTo(Cover.SHELVED);

            bench.pass(HOUR);
            assertThat(bench.only().state()).isEqualTo(RETURNED_UNACKNOWLEDGED);
        }

        @Test
        void rings_nobody_meanwhile() {
            shelved(WARMING, 24);
            bench.report(bench.standing(0));
            bench.pass(HOUR);

            assertThat(bench.report(bench.standing(0, WARMING)))
                    .extracting(AlarmEvent::rings)
                    .containsExactly(false);
        }

        @Test
        void is_over_if_it_was_acknowledged_and_its_condition_is_gone() {
            bench.report(bench.standing(0, WARMING));
            bench.acknowledge(bench.only());
            bench.done(bench.book.takeOutOfService(bench.only().id(), ANNA, "new sensor", bench.now()));
            bench.report(bench.standing(0));
            bench.pass(HOUR);
            assertThat(bench.only().state()).isEqualTo(NORMAL);

            bench.done(bench.book.putBackInService(bench.only().id(), ANNA, bench.now()));
            assertThat(bench.book.alive()).isEmpty();
        }

        @Test
        void stays_out_of_service_until_a_person_puts_it_back() {
            bench.report(bench.standing(0, SENSOR_FAULT));
            bench.pass(2_000);
            bench.done(bench.book.takeOutOfService(bench.only().id(), ANNA, "new sensor", bench.now()));
            assertThat(bench.pass(1000 * HOUR)).isEmpty();

            assertThat(bench.done(bench.book.putBackInService(bench.only().id(), ANNA, bench.now()))
                            .rings())
                    .isTrue();
        }

        @Test
        void comes_back_in_time_though_the_wall_clock_goes_back() {
            shelved(WARMING, 2);
            bench.wallMillis -= 300 * HOUR;

            assertThat(bench.pass(2 * HOUR)).hasSize(1);
        }

        @Test
        void comes_back_after_a_restart_for_what_was_left_of_its_time() {
            Alarm before = shelved(WARMING, 2);
            bench.pass(HOUR);
            bench.monotonicMillis = 3;
            bench.book = bench.newBook();
            bench.book.resume(List.of(before), List.of(bench.standing(0, WARMING)), bench.now());

            assertThat(bench.pass(HOUR - 1)).isEmpty();
            assertThat(bench.pass(1)).hasSize(1);
        }

        @Test
        void comes_back_at_once_after_a_restart_whose_wall_clock_lies_before() {
            Alarm before = shelved(WARMING, 2);
            bench.wallMillis -= 1;
            bench.book = bench.newBook();
            bench.book.resume(List.of(before), List.of(bench.standing(0, WARMING)), bench.now());

            assertThat(bench.tick()).extracting(AlarmEvent::step).containsExactly(AlarmStep.SHELVING_ENDED);
        }

        @Test
        void is_never_hot() {
            bench.report(bench.standing(0, HOT));
            UUID hot = bench.only().id();

            assertThat(BookBench.refused(bench.book.shelve(hot, ANNA, "busy", Duration.ofHours(1), bench.now())))
                    .isEqualTo(Why.STAYS_IN_VIEW);
            assertThat(BookBench.refused(bench.book.takeOutOfService(hot, ANNA, "busy", bench.now())))
                    .isEqualTo(Why.STAYS_IN_VIEW);
        }

        @Test
        void needs_a_reason_a_name_and_a_sensible_time() {
            bench.report(bench.standing(0, WARMING));
            UUID id = bench.only().id();
            var hour = Duration.ofHours(1);

            assertThat(BookBench.refused(bench.book.shelve(id, ANNA, " ", hour, bench.now())))
                    .isEqualTo(Why.NO_REASON);
            assertThat(BookBench.refused(bench.book.shelve(id, ANNA, "x".repeat(1001), hour, bench.now())))
                    .isEqualTo(Why.NO_REASON);
            assertThat(BookBench.refused(bench.book.shelve(id, "", "busy", hour, bench.now())))
                    .isEqualTo(Why.NO_NAME);
            assertThat(BookBench.refused(bench.book.acknowledge(id, "x".repeat(101), bench.now())))
                    .isEqualTo(Why.NO_NAME);
            assertThat(BookBench.refused(bench.book.shelve(id, ANNA, "busy", Duration.ofHours(25), bench.now())))
                    .isEqualTo(Why.BAD_TIME);
            assertThat(BookBench.refused(bench.book.shelve(id, ANNA, "busy", Duration.ofSeconds(59), bench.now())))
                    .isEqualTo(Why.BAD_TIME);
            assertThat(bench.only().steps()).isEqualTo(1);
        }
    }

    @Nested
    class A_request {

        @Test
        void is_refused_with_what_is_allowed_instead() {
            bench.report(bench.standing(0, WARMING));
            bench.acknowledge(bench.only());

            AlarmAnswer answer = bench.book.acknowledge(bench.only().id(), ANNA, bench.now());

            assertThat(answer).isInstanceOf(Refused.class);
            Refused refused = (Refused) answer;
            assertThat(refused.why()).isEqualTo(Why.NOT_NOW);
            assertThat(refused.words()).contains("ACKNOWLEDGED", "SHELVED");
            assertThat(refused.allowed()).containsExactlyInAnyOrder(AlarmStep.SHELVED, AlarmStep.TAKEN_OUT_OF_SERVICE);
        }

        @Test
        void for_an_alarm_that_is_over_is_refused() {
            bench.report(bench.standing(0, WARMING));
            Alarm alarm = bench.only();
            bench.acknowledge(alarm);
            bench.report(bench.over(0));

            assertThat(BookBench.refused(bench.book.acknowledge(alarm.id(), ANNA, bench.now())))
                    .isEqualTo(Why.NO_SUCH_ALARM);
        }

        @Test
        void is_kept_with_who_and_when() {
            bench.report(bench.standing(0, WARMING));
            bench.pass(HOUR);

            AlarmEvent event = bench.done(bench.book.acknowledge(bench.only().id(), ANNA, bench.now()));

            assertThat(event.who()).isEqualTo(ANNA);
            assertThat(event.at().wallMillis()).isEqualTo(BookBench.NOON + HOUR);
            assertThat(event.sent()).isTrue();
            assertThat(event.rings()).isFalse();
            assertThat(event.alarm().acknowledgedBy()).isEqualTo(ANNA);
        }
    }
}
