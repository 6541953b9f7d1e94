package org.ebbwatch.alarm.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.ebbwatch.alarm.book.AlarmKind.CLOCK_ODD;
import static org.ebbwatch.alarm.book.AlarmKind.HELD;
import static org.ebbwatch.alarm.book.AlarmKind.LOAD_HOT;
import static org.ebbwatch.alarm.book.AlarmKind.LOAD_LOST;
import static org.ebbwatch.alarm.book.AlarmKind.REBOUND;
import static org.ebbwatch.alarm.book.AlarmKind.WARMING;
import static org.ebbwatch.alarm.book.AlarmState.ACKNOWLEDGED;

import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** A book that goes on where an earlier run ended. */
class AlarmBookRestartTest {
    private final BookBench bench = new BookBench();

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
            bench.pass(2_000);
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
            bench.report(bench.sixteen(LOAD_LOST));

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
}
