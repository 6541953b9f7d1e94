package org.ebbwatch.alarm.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.ebbwatch.alarm.book.AlarmKind.AMBIENT_HIGH;
import static org.ebbwatch.alarm.book.AlarmKind.CLOCK_ODD;
import static org.ebbwatch.alarm.book.AlarmKind.HELD;
import static org.ebbwatch.alarm.book.AlarmKind.HOT;
import static org.ebbwatch.alarm.book.AlarmKind.LOAD_HOT;
import static org.ebbwatch.alarm.book.AlarmKind.LOAD_LOST;
import static org.ebbwatch.alarm.book.AlarmKind.REBOUND;
import static org.ebbwatch.alarm.book.AlarmKind.SENSOR_FAULT;
import static org.ebbwatch.alarm.book.AlarmKind.SILENT;
import static org.ebbwatch.alarm.book.AlarmKind.STALLED;
import static org.ebbwatch.alarm.book.AlarmKind.WARMING;
import static org.ebbwatch.alarm.book.AlarmState.ACKNOWLEDGED;
import static org.ebbwatch.alarm.book.AlarmState.LATCHED_ACKNOWLEDGED;
import static org.ebbwatch.alarm.book.AlarmState.LATCHED_UNACKNOWLEDGED;
import static org.ebbwatch.alarm.book.AlarmState.NORMAL;
import static org.ebbwatch.alarm.book.AlarmState.RETURNED_UNACKNOWLEDGED;
import static org.ebbwatch.alarm.book.AlarmState.UNACKNOWLEDGED;
import static org.ebbwatch.alarm.book.BookBench.ANNA;
import static org.ebbwatch.alarm.book.BookBench.HOUR;
import static org.ebbwatch.alarm.book.BookBench.passage;

import java.time.Duration;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.ebbwatch.alarm.book.AlarmAnswer.Refused;
import org.ebbwatch.alarm.book.AlarmAnswer.Why;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class AlarmBookTest {
    private final BookBench bench = new BookBench();

    private static Report[] sixteen(BookBench bench, AlarmKind... kinds) {
        return IntStream.range(0, 16).mapToObj(n -> bench.standing(n, kinds)).toArray(Report[]::new);
    }

    private static Subject of(int n) {
        return new Subject.Passage(passage(n));
    }

    @Nested
    class What_one_cause_does_to_many_cells {

        @ParameterizedTest
        @EnumSource(
                value = AlarmKind.class,
                names = {"SILENT", "CLOCK_ODD", "LOAD_HOT"})
        void is_one_alarm_of_the_board(AlarmKind kind) {
            List<AlarmEvent> events = bench.report(sixteen(bench, kind));

            assertThat(events).hasSize(1);
            assertThat(bench.only().subject()).isEqualTo(new Subject.Board("left"));
            assertThat(bench.only().tags()).hasSize(16).startsWith("cell 0", "cell 1");
            assertThat(bench.only().cause().passage()).contains(passage(0));
        }

        @Test
        void is_another_alarm_on_another_board() {
            bench.report(bench.standing(0, SILENT));
            bench.report(bench.standing(16, SILENT));

            assertThat(bench.book.alive())
                    .extracting(Alarm::subject)
                    .containsExactly(new Subject.Board("left"), new Subject.Board("right"));
        }

        @Test
        void is_one_alarm_of_the_rack_for_the_room() {
            bench.report(sixteen(bench, AMBIENT_HIGH));
            bench.report(bench.standing(16, AMBIENT_HIGH));

            assertThat(bench.only().subject()).isEqualTo(new Subject.Rack());
            assertThat(bench.only().tags()).hasSize(17);
        }

        @ParameterizedTest
        @EnumSource(
                value = AlarmKind.class,
                names = {"SENSOR_FAULT", "LOAD_LOST", "LOAD_STUCK", "LEAD_OPEN", "HELD"})
        void is_one_alarm_of_the_board_where_several_begin_at_once(AlarmKind kind) {
            bench.report(sixteen(bench, kind));

            assertThat(bench.only().subject()).isEqualTo(new Subject.Board("left"));
        }

        @Test
        void is_not_guessed_from_two_cells_nor_from_cells_one_after_the_other() {
            bench.report(
                    bench.standing(0, SENSOR_FAULT), bench.standing(1, SENSOR_FAULT), bench.standing(16, SENSOR_FAULT));
            bench.report(bench.standing(2, SENSOR_FAULT));

            assertThat(bench.book.alive()).extracting(Alarm::subject).containsExactly(of(0), of(1), of(16), of(2));
        }

        @Test
        void never_swallows_what_begins_on_one_cell_later() {
            bench.report(sixteen(bench, SENSOR_FAULT));
            bench.acknowledge(bench.only());
            bench.report(bench.standing(3));

            List<AlarmEvent> again = bench.report(bench.standing(3, SENSOR_FAULT));

            assertThat(again).extracting(event -> event.alarm().subject()).containsExactly(of(3));
            assertThat(again.get(0).rings()).isTrue();
        }

        @ParameterizedTest
        @EnumSource(
                value = AlarmKind.class,
                names = {"HOT", "REVERSED", "WARMING", "CUT_OFF", "TIE_LOOSE"})
        void stays_one_alarm_a_cell_where_each_needs_looking_after(AlarmKind kind) {
            bench.report(sixteen(bench, kind));

            assertThat(bench.book.alive()).hasSize(16);
        }

        @Test
        void is_over_when_the_last_cell_is_well() {
            bench.report(sixteen(bench, SILENT));
            for (int n = 0; n < 15; n++) {
                bench.report(bench.standing(n));
            }
            assertThat(bench.pass(HOUR)).isEmpty();
            assertThat(bench.only().tags()).containsExactly("cell 15");

            bench.report(bench.standing(15));
            assertThat(bench.pass(HOUR)).extracting(AlarmEvent::step).containsExactly(AlarmStep.RETURNED);
        }
    }

    @Nested
    class What_flickers {

        @Test
        void rings_once_and_returns_after_a_minute_of_peace() {
            bench.report(bench.standing(0, WARMING));
            for (int n = 0; n < 10; n++) {
                assertThat(bench.report(bench.standing(0))).isEmpty();
                assertThat(bench.pass(59_000)).isEmpty();
                assertThat(bench.report(bench.standing(0, WARMING))).isEmpty();
                assertThat(bench.only().state()).isEqualTo(UNACKNOWLEDGED);
            }
            bench.report(bench.standing(0));
            assertThat(bench.pass(59_999)).isEmpty();
            assertThat(bench.pass(1)).hasSize(1);
            assertThat(bench.only().state()).isEqualTo(RETURNED_UNACKNOWLEDGED);
        }

        @Test
        void does_not_return_while_its_board_says_nothing() {
            bench.report(bench.standing(0, WARMING));
            bench.report(bench.standing(0));
            bench.wallMillis += HOUR;
            bench.monotonicMillis += HOUR;

            assertThat(bench.tick()).isEmpty();
        }

        @Test
        void ends_at_once_with_its_passage() {
            bench.report(bench.standing(0, WARMING, STALLED));
            bench.report(bench.standing(0, WARMING));

            assertThat(bench.report(bench.over(0)))
                    .extracting(event -> event.step() + " " + event.alarm().kind())
                    .containsExactlyInAnyOrder("RETURNED WARMING", "RETURNED STALLED");
        }

        @Test
        void goes_on_when_one_passage_ends_as_another_begins_the_same() {
            bench.report(bench.standing(0, SILENT));

            assertThat(bench.report(bench.over(0), bench.standing(1, SILENT))).isEmpty();
            assertThat(bench.only().tags()).containsExactly("cell 1");
        }

        @Test
        void rings_again_on_the_same_alarm_when_it_begins_anew_before_anybody_saw_it() {
            bench.report(bench.standing(0, WARMING));
            UUID first = bench.only().id();
            bench.report(bench.standing(0));
            bench.pass(60_000);

            List<AlarmEvent> again = bench.report(bench.standing(0, WARMING));

            assertThat(again).hasSize(1);
            assertThat(again.get(0).rings()).isTrue();
            assertThat(bench.only().id()).isEqualTo(first);
            assertThat(bench.only().cause().eventMillis()).isEqualTo(60_000);
        }
    }

    @Nested
    class At_night {

        @Test
        void an_advisory_alarm_is_in_the_book_but_rings_in_the_morning() {
            bench.pass(11 * HOUR);
            List<AlarmEvent> raised = bench.report(bench.standing(0, STALLED));
            assertThat(raised).hasSize(1);
            assertThat(raised.get(0).sent()).isFalse();
            assertThat(raised.get(0).rings()).isFalse();
            assertThat(bench.only().state()).isEqualTo(UNACKNOWLEDGED);

            assertThat(bench.pass(7 * HOUR)).isEmpty();

            List<AlarmEvent> morning = bench.pass(HOUR);
            assertThat(morning).extracting(AlarmEvent::step).containsExactly(AlarmStep.TOLD);
            assertThat(morning.get(0).sent()).isTrue();
            assertThat(morning.get(0).rings()).isTrue();
            assertThat(bench.pass(HOUR)).isEmpty();
        }

        @Test
        void one_that_came_and_went_is_told_in_the_morning_too() {
            bench.pass(11 * HOUR);
            bench.report(bench.standing(0, STALLED));
            bench.report(bench.standing(0));
            assertThat(bench.pass(HOUR))
                    .allSatisfy(event -> assertThat(event.sent()).isFalse());

            assertThat(bench.pass(8 * HOUR)).extracting(AlarmEvent::rings).containsExactly(true);
            assertThat(bench.only().state()).isEqualTo(RETURNED_UNACKNOWLEDGED);
        }

        @Test
        void one_that_somebody_acknowledged_does_not_ring_in_the_morning() {
            bench.pass(11 * HOUR);
            bench.report(bench.standing(0, STALLED));
            bench.acknowledge(bench.only());

            List<AlarmEvent> morning = bench.pass(9 * HOUR);
            assertThat(morning).extracting(AlarmEvent::sent).containsExactly(true);
            assertThat(morning).extracting(AlarmEvent::rings).containsExactly(false);
        }

        @Test
        void what_is_ringing_or_dangerous_rings() {
            bench.pass(11 * HOUR);

            assertThat(bench.report(bench.standing(0, HOT, WARMING)))
                    .hasSize(2)
                    .allSatisfy(event -> assertThat(event.rings()).isTrue());
        }

        @Test
        void a_wall_clock_that_steps_far_back_leaves_nothing_waiting_for_ever() {
            bench.pass(11 * HOUR);
            bench.report(bench.standing(0, STALLED));
            bench.wallMillis -= 40_000 * HOUR;

            for (int hours = 0; hours < 24 && !bench.only().told(); hours++) {
                bench.pass(HOUR);
            }
            assertThat(bench.only().told()).isTrue();
        }
    }

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
            assertThat(refused(bench.book.reset(bench.only().id(), ANNA, bench.now())))
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

            assertThat(refused(bench.book.reset(bench.only().id(), ANNA, bench.now())))
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

            assertThat(refused(bench.book.shelve(hot, ANNA, "busy", Duration.ofHours(1), bench.now())))
                    .isEqualTo(Why.STAYS_IN_VIEW);
            assertThat(refused(bench.book.takeOutOfService(hot, ANNA, "busy", bench.now())))
                    .isEqualTo(Why.STAYS_IN_VIEW);
        }

        @Test
        void needs_a_reason_a_name_and_a_sensible_time() {
            bench.report(bench.standing(0, WARMING));
            UUID id = bench.only().id();
            var hour = Duration.ofHours(1);

            assertThat(refused(bench.book.shelve(id, ANNA, " ", hour, bench.now())))
                    .isEqualTo(Why.NO_REASON);
            assertThat(refused(bench.book.shelve(id, ANNA, "x".repeat(1001), hour, bench.now())))
                    .isEqualTo(Why.NO_REASON);
            assertThat(refused(bench.book.shelve(id, "", "busy", hour, bench.now())))
                    .isEqualTo(Why.NO_NAME);
            assertThat(refused(bench.book.acknowledge(id, "x".repeat(101), bench.now())))
                    .isEqualTo(Why.NO_NAME);
            assertThat(refused(bench.book.shelve(id, ANNA, "busy", Duration.ofHours(25), bench.now())))
                    .isEqualTo(Why.BAD_TIME);
            assertThat(refused(bench.book.shelve(id, ANNA, "busy", Duration.ofSeconds(59), bench.now())))
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

            assertThat(refused(bench.book.acknowledge(alarm.id(), ANNA, bench.now())))
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

    @Nested
    class After_a_restart {

        private List<AlarmEvent> restart(Report... reports) {
            List<Alarm> living = bench.book.alive();
            bench.book = bench.newBook();
            return bench.book.resume(living, List.of(reports), bench.now());
        }

        @Test
        void nothing_is_lost_and_nothing_rings_twice() {
            bench.report(bench.standing(0, WARMING, HELD), bench.standing(1, CLOCK_ODD), bench.standing(2, CLOCK_ODD));
            bench.acknowledge(bench.of(HELD));
            List<Alarm> before = bench.book.alive();

            assertThat(restart(
                            bench.standing(2, CLOCK_ODD),
                            bench.standing(1, CLOCK_ODD),
                            bench.standing(0, WARMING, HELD)))
                    .isEmpty();
            assertThat(bench.book.alive())
                    .extracting(Alarm::id)
                    .containsExactlyElementsOf(before.stream().map(Alarm::id).toList());
            assertThat(bench.of(HELD).state()).isEqualTo(ACKNOWLEDGED);
        }

        @Test
        void what_several_cells_shared_goes_on_being_one_alarm() {
            bench.report(sixteen(bench, LOAD_LOST));

            assertThat(restart(bench.standing(3, LOAD_LOST))).isEmpty();
            assertThat(bench.only().tags()).containsExactly("cell 3");
        }

        @Test
        void what_is_gone_returns_and_what_is_new_is_raised() {
            bench.report(bench.standing(0, WARMING), bench.standing(1, REBOUND));

            assertThat(restart(bench.standing(0, LOAD_HOT)))
                    .extracting(event -> event.step() + " " + event.alarm().kind())
                    .containsExactly("RAISED LOAD_HOT", "RETURNED WARMING", "RETURNED REBOUND");
        }

        @Test
        void two_alarms_of_one_kind_and_subject_are_refused() {
            bench.report(bench.standing(0, WARMING));
            List<Alarm> twice = List.of(bench.only(), bench.only());

            assertThatThrownBy(() -> bench.newBook().resume(twice, List.of(), bench.now()))
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }

    private static Why refused(AlarmAnswer answer) {
        assertThat(answer).isInstanceOf(Refused.class);
        assertThat(((Refused) answer).words()).endsWith(".");
        return ((Refused) answer).why();
    }
}
