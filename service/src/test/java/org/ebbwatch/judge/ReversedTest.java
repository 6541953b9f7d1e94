package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;
import static org.ebbwatch.judge.PassageBench.seconds;

import org.ebbwatch.judge.Outcome.Wish;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class ReversedTest {

    @Nested
    class REVERSED {

        @Test
        void is_raised_below_zero_the_load_opens_and_the_cell_never_drains_again() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .emptied()
                    .cell(-0.03, -0.03)
                    .watch(minutes(1))
                    .watch(seconds(3));

            assertThat(bench.standing()).contains(FindingKind.REVERSED);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.isLoaded()).isFalse();
            bench.swapFor(3.7, 3.6).watch(hours(1));
            assertThat(bench.judge().allowed()).containsExactly(Act.WITHDRAW);
        }

        @Test
        void is_not_raised_for_a_single_reading() {
            PassageBench bench = PassageBench.switched().draining().reads(-0.5).watch(seconds(2));
            bench.readsTheCellAgain().watch(minutes(1));

            assertThat(bench.raised()).doesNotContain(FindingKind.REVERSED);
        }

        @Test
        void is_not_raised_where_the_uncertainty_explains_it() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .emptied()
                    .watch(minutes(10))
                    .cell(0.3, -0.021)
                    .watch(minutes(5));

            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void is_raised_at_check_in_for_a_cell_put_in_the_wrong_way() {
            PassageBench bench = PassageBench.switched().cell(-3.7, -3.6).watch(seconds(3));

            assertThat(bench.standing()).contains(FindingKind.REVERSED);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void is_raised_for_a_parted_cell_and_not_taken_for_a_voltage_below_the_limit() {
            PassageBench bench =
                    PassageBench.switched().parted().swapFor(-0.4, 0).watch(seconds(3));

            assertThat(bench.standing()).contains(FindingKind.REVERSED);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void is_not_raised_while_the_leads_are_bonded() {
            PassageBench bench = PassageBench.switched().tiedOff().reads(-0.03).watch(minutes(1));

            assertThat(bench.raised()).isEmpty();
        }
    }

    @Nested
    class A_string {

        @Test
        void is_opened_before_any_of_its_cells_is_below_one_volt() {
            PassageBench bench = PassageBench.of(PassageBench.stringCell()).draining();
            bench.drainedTo(1.4, 1.003);
            assertThat(bench.wishes()).doesNotContain(Wish.OPEN_STRING);

            bench.cell(1.4, 1.0).watch(seconds(1));

            assertThat(bench.wishes()).contains(Wish.OPEN_STRING);
        }

        @Test
        void is_asked_open_again_and_again_while_it_is_on() {
            PassageBench bench = PassageBench.of(PassageBench.stringCell())
                    .draining()
                    .collapsesTo(1.3, 0.9)
                    .watch(seconds(35));

            assertThat(bench.wishes()).filteredOn(Wish.OPEN_STRING::equals).hasSizeBetween(3, 5);
        }

        @Test
        void is_opened_for_a_cell_that_is_held_on_its_load() {
            PassageBench bench = PassageBench.of(PassageBench.stringCell())
                    .draining()
                    .drainedTo(3.0, 2.4)
                    .watch(hours(1));

            bench.collapsesTo(0, 0).watch(seconds(2));

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.wishes()).contains(Wish.OPEN_STRING);
        }

        @Test
        void is_opened_whenever_one_of_its_cells_must_come_off() {
            PassageBench bench = PassageBench.of(PassageBench.stringCell())
                    .draining()
                    .celsius(61)
                    .watch(seconds(2));

            assertThat(bench.wishes()).contains(Wish.OPEN_STRING);
        }

        @Test
        void is_opened_when_one_of_its_cells_cannot_be_seen() {
            PassageBench bench = PassageBench.of(PassageBench.stringCell())
                    .draining()
                    .reads(Double.NaN)
                    .watch(seconds(5));

            assertThat(bench.wishes()).contains(Wish.OPEN_STRING);
        }

        @Test
        void once_opened_is_not_closed_again_and_its_cells_finish_singly() {
            PassageBench bench = PassageBench.of(PassageBench.stringCell())
                    .draining()
                    .collapsesTo(1.4, 0.9)
                    .watch(seconds(2));
            bench.forgetEvents().stringOpened().watch(minutes(5));
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.wishes()).doesNotContain(Wish.CLOSE_LOAD);

            bench.forgetEvents().act(Act.DRAIN_AGAIN).watch(minutes(5));

            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.isLoaded()).isTrue();
            assertThat(bench.wishes()).doesNotContain(Wish.OPEN_STRING);
        }

        @Test
        void is_not_opened_for_a_cell_of_its_own() {
            PassageBench bench = PassageBench.switched().draining().emptied().watch(hours(1));

            assertThat(bench.wishes()).doesNotContain(Wish.OPEN_STRING);
        }
    }
}
