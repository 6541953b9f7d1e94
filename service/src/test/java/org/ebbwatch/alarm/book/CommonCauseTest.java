package org.ebbwatch.alarm.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.alarm.book.AlarmKind.HELD;
import static org.ebbwatch.alarm.book.AlarmKind.HOT;
import static org.ebbwatch.alarm.book.AlarmKind.LOAD_LOST;
import static org.ebbwatch.alarm.book.AlarmKind.SENSOR_FAULT;
import static org.ebbwatch.alarm.book.AlarmKind.SILENT;
import static org.ebbwatch.alarm.book.AlarmKind.WARMING;
import static org.ebbwatch.alarm.book.BookBench.HOUR;
import static org.ebbwatch.alarm.book.BookBench.passage;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What reaches many cells from outside makes one alarm, and what one cell does by itself is never lost in it. */
class CommonCauseTest {
    private static final Subject LEFT = new Subject.Board("left");

    private final BookBench bench = new BookBench();

    private static Subject of(int n) {
        return new Subject.Passage(passage(n));
    }

    /** Cells 100, 101, ... of the board left warm slightly, one after the other. */
    private void sun(int cells, long spacingMillis) {
        for (int n = 100; n < 100 + cells; n++) {
            bench.report(bench.mild(n));
            bench.pass(spacingMillis);
        }
    }

    private long rings() {
        return bench.events.stream().filter(AlarmEvent::rings).count();
    }

    @Nested
    class Sun_on_the_rack {

        @ParameterizedTest
        @CsvSource({"16, 0", "16, 5000", "16, 50000", "64, 0", "64, 1000", "64, 50000"})
        void is_one_alarm_that_names_every_cell(int cells, long spacingMillis) {
            sun(cells, spacingMillis);

            assertThat(rings()).isEqualTo(1);
            assertThat(bench.only().kind()).isEqualTo(WARMING);
            assertThat(bench.only().subject()).isEqualTo(LEFT);
            assertThat(bench.only().tags())
                    .containsExactlyElementsOf(IntStream.range(100, 100 + cells)
                            .mapToObj(n -> "cell " + n)
                            .toList());
            assertThat(bench.only().what()).startsWith(cells + " cells of board left (cell 100, cell 101, ");
            assertThat(bench.only().toDo()).contains("sun", "heating", "draught");
        }

        @Test
        void keeps_the_cell_that_was_first() {
            sun(16, 50_000);

            assertThat(bench.only().cause().tag()).isEqualTo("cell 100");
        }

        @Test
        void leaves_two_cells_that_are_really_hot_their_own_alarms_each_at_once() {
            sun(8, 10_000);
            assertThat(bench.report(bench.standing(3, HOT), bench.standing(4, WARMING)))
                    .extracting(event -> event.alarm().subject())
                    .containsExactly(of(3), of(4));
            sun(16, 10_000);

            assertThat(bench.book.alive())
                    .extracting(alarm -> alarm.kind() + " " + alarm.subject().text())
                    .containsExactly("WARMING board left", "HOT " + of(3).text(), "WARMING " + of(4).text());
        }

        @Test
        void lets_go_of_a_cell_that_gets_hot_or_fast_and_that_one_rings() {
            sun(16, 1_000);
            Alarm group = bench.only();
            bench.acknowledge(group);

            List<AlarmEvent> own = bench.report(bench.standing(105, WARMING));

            assertThat(own).hasSize(1);
            assertThat(own.get(0).rings()).isTrue();
            assertThat(own.get(0).alarm().subject()).isEqualTo(of(105));
            assertThat(bench.book.alive().get(0).tags()).hasSize(15).doesNotContain("cell 105");
        }

        @Test
        void is_told_again_when_it_reaches_several_cells_hours_after_it_was_acknowledged() {
            sun(4, 1_000);
            bench.acknowledge(bench.only());
            bench.pass(3 * HOUR);
            bench.report(bench.mild(110));
            bench.report(bench.mild(111));
            assertThat(rings()).isEqualTo(1);

            bench.report(bench.mild(112));

            assertThat(rings()).isEqualTo(2);
            assertThat(bench.only().tags()).hasSize(7);
            assertThat(bench.only().cause().tag()).isEqualTo("cell 110");
        }

        @Test
        void does_not_swallow_one_cell_that_warms_slightly_hours_later() {
            sun(4, 1_000);
            bench.acknowledge(bench.only());
            bench.pass(3 * HOUR);
            bench.report(bench.mild(110));

            assertThat(bench.pass(120_000))
                    .extracting(event -> event.alarm().subject())
                    .containsExactly(of(110));
        }

        @Test
        void takes_no_cell_beneath_a_cover() {
            sun(4, 1_000);
            bench.done(bench.book.takeOutOfService(bench.only().id(), "Ben", "the sun, I know", bench.now()));
            bench.report(bench.mild(110));

            assertThat(bench.pass(120_000)).hasSize(1).allMatch(AlarmEvent::rings);
        }
    }

    @Nested
    class A_cell_that_warms_slightly_by_itself {

        @ParameterizedTest
        @ValueSource(ints = {1, 2})
        void rings_as_its_own_after_two_minutes(int cells) {
            sun(cells, 0);
            assertThat(bench.pass(119_999)).isEmpty();

            assertThat(bench.pass(1)).hasSize(cells).allMatch(AlarmEvent::rings);
            assertThat(bench.book.alive()).extracting(Alarm::subject).doesNotContain(LEFT);
        }

        @Test
        void rings_by_the_hosts_time_where_its_board_says_nothing_more() {
            sun(1, 0);
            bench.monotonicMillis += 120_000;

            assertThat(bench.tick()).hasSize(1);
        }

        @Test
        void rings_at_once_when_it_gets_fast_while_it_waits() {
            sun(1, 1_000);

            assertThat(bench.report(bench.standing(100, WARMING))).hasSize(1).allMatch(AlarmEvent::rings);
            assertThat(bench.pass(HOUR)).isEmpty();
        }

        @Test
        void says_nothing_where_it_is_over_within_two_minutes() {
            sun(1, 60_000);
            bench.report(bench.standing(100));

            assertThat(bench.pass(HOUR)).isEmpty();
            assertThat(bench.book.alive()).isEmpty();
        }

        @Test
        void is_no_group_with_those_of_another_board() {
            bench.report(bench.mild(0), bench.mild(1), bench.mild(16), bench.mild(17));
            bench.pass(120_000);

            assertThat(bench.book.alive()).extracting(Alarm::subject).containsExactly(of(0), of(1), of(16), of(17));
        }
    }

    @Nested
    class A_mains_dip_or_a_board_that_starts_again {

        @ParameterizedTest
        @CsvSource({"LOAD_LOST, 0", "LOAD_LOST, 300", "SENSOR_FAULT, 900", "HELD, 900", "LEAD_OPEN, 300"})
        void is_one_alarm_though_the_cells_find_out_one_after_the_other(AlarmKind kind, long spacingMillis) {
            for (int n = 0; n < 16; n++) {
                bench.report(bench.standing(n, kind));
                bench.pass(spacingMillis);
            }

            assertThat(rings()).isEqualTo(1);
            assertThat(bench.only().subject()).isEqualTo(LEFT);
            assertThat(bench.only().tags()).hasSize(16);
            assertThat(bench.only().what())
                    .startsWith("16 cells of board left (")
                    .endsWith(kind.what());
        }

        @Test
        void is_one_alarm_of_each_kind_it_shows_by() {
            bench.report(bench.sixteen(SILENT));
            bench.pass(20_000);
            bench.report(bench.sixteen(LOAD_LOST, HELD));

            assertThat(rings()).isEqualTo(3);
            assertThat(bench.book.alive()).extracting(Alarm::subject).containsOnly(LEFT);
        }

        @Test
        void keeps_nobody_waiting_for_more_than_two_seconds() {
            bench.report(bench.standing(0, SENSOR_FAULT));
            assertThat(bench.pass(1_999)).isEmpty();
            assertThat(bench.pass(1)).hasSize(1).allMatch(AlarmEvent::rings);
        }

        @Test
        void tells_even_what_was_over_before_that() {
            bench.report(bench.standing(0, SENSOR_FAULT));
            assertThat(bench.report(bench.standing(0))).hasSize(1).allMatch(AlarmEvent::rings);
            assertThat(bench.pass(60_000)).extracting(AlarmEvent::step).containsExactly(AlarmStep.RETURNED);
        }
    }

    @Nested
    class After_a_restart {

        @Test
        void the_group_goes_on_and_what_began_meanwhile_rings() {
            Report first = bench.mild(100);
            sun(4, 1_000);

            assertThat(bench.restart(
                            bench.mild(103), bench.mild(102), bench.mild(101), bench.mild(100), bench.mild(110)))
                    .isEmpty();
            assertThat(bench.only().tags()).hasSize(5);

            bench.pass(3 * HOUR);
            bench.report(bench.mild(111));
            bench.pass(1_000);
            assertThat(bench.restart(first, bench.mild(111)))
                    .filteredOn(AlarmEvent::rings)
                    .extracting(event -> event.alarm().subject())
                    .containsExactly(of(111));
        }

        @Test
        void nothing_waits_that_may_have_waited_before() {
            sun(2, 1_000);

            assertThat(bench.restart(bench.mild(100), bench.mild(101)))
                    .hasSize(2)
                    .allMatch(AlarmEvent::rings);
        }
    }

    @Test
    void a_group_that_named_other_cells_is_to_be_written_down() {
        sun(3, 1_000);
        bench.book.takeAmended();
        bench.report(bench.mild(103));

        assertThat(bench.book.takeAmended())
                .extracting(alarm -> alarm.tags().size())
                .containsExactly(4);
        assertThat(bench.book.takeAmended()).isEmpty();
    }
}
