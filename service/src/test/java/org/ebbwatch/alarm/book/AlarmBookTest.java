package org.ebbwatch.alarm.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.alarm.book.AlarmKind.AMBIENT_HIGH;
import static org.ebbwatch.alarm.book.AlarmKind.HOT;
import static org.ebbwatch.alarm.book.AlarmKind.SENSOR_FAULT;
import static org.ebbwatch.alarm.book.AlarmKind.SILENT;
import static org.ebbwatch.alarm.book.AlarmKind.STALLED;
import static org.ebbwatch.alarm.book.AlarmKind.WARMING;
import static org.ebbwatch.alarm.book.AlarmState.RETURNED_UNACKNOWLEDGED;
import static org.ebbwatch.alarm.book.AlarmState.UNACKNOWLEDGED;
import static org.ebbwatch.alarm.book.BookBench.HOUR;
import static org.ebbwatch.alarm.book.BookBench.passage;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What stands on the rack becomes alarms: which, how many, and when they ring. */
class AlarmBookTest {
    private final BookBench bench = new BookBench();

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
            List<AlarmEvent> events = bench.report(bench.sixteen(kind));

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
            bench.report(bench.sixteen(AMBIENT_HIGH));
            bench.report(bench.standing(16, AMBIENT_HIGH));

            assertThat(bench.only().subject()).isEqualTo(new Subject.Rack());
            assertThat(bench.only().tags()).hasSize(17);
        }

        @ParameterizedTest
        @EnumSource(
                value = AlarmKind.class,
                names = {"SENSOR_FAULT", "LOAD_LOST", "LOAD_STUCK", "LEAD_OPEN", "HELD"})
        void is_one_alarm_of_the_board_where_several_begin_at_once(AlarmKind kind) {
            bench.report(bench.sixteen(kind));

            assertThat(bench.only().subject()).isEqualTo(new Subject.Board("left"));
        }

        @Test
        void is_not_guessed_from_two_cells_nor_from_cells_one_after_the_other() {
            bench.report(
                    bench.standing(0, SENSOR_FAULT), bench.standing(1, SENSOR_FAULT), bench.standing(16, SENSOR_FAULT));
            bench.pass(2_000);
            bench.report(bench.standing(2, SENSOR_FAULT));
            bench.pass(2_000);

            assertThat(bench.book.alive()).extracting(Alarm::subject).containsExactly(of(0), of(1), of(16), of(2));
        }

        @Test
        void never_swallows_what_begins_on_one_cell_later() {
            bench.report(bench.sixteen(SENSOR_FAULT));
            bench.acknowledge(bench.only());
            bench.report(bench.standing(3));
            bench.pass(60_000);

            bench.report(bench.standing(3, SENSOR_FAULT));
            List<AlarmEvent> again = bench.pass(2_000);

            assertThat(again).extracting(event -> event.alarm().subject()).containsExactly(of(3));
            assertThat(again.get(0).rings()).isTrue();
        }

        @ParameterizedTest
        @EnumSource(
                value = AlarmKind.class,
                names = {"HOT", "REVERSED", "WARMING", "CUT_OFF", "TIE_LOOSE"})
        void stays_one_alarm_a_cell_where_each_needs_looking_after(AlarmKind kind) {
            bench.report(bench.sixteen(kind));

            assertThat(bench.book.alive()).hasSize(16);
        }

        @Test
        void is_over_when_the_last_cell_is_well() {
            bench.report(bench.sixteen(SILENT));
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
}
