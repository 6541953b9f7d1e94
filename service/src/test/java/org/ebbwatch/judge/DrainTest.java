package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;
import static org.ebbwatch.judge.PassageBench.seconds;

import org.ebbwatch.judge.Outcome.Wish;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class DrainTest {

    @Nested
    class The_hold {

        @Test
        void ends_after_twelve_hours_below_the_limit_and_the_load_opens() {
            PassageBench bench = PassageBench.switched().draining().emptied();

            bench.watch(hours(12).minusMinutes(2));
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);

            bench.watch(minutes(3));
            assertThat(bench.phase()).isEqualTo(Phase.REST);
            assertThat(bench.isLoaded()).isFalse();
        }

        @Test
        void counts_uncertainty_against_the_cell() {
            PassageBench bench = PassageBench.switched().draining().drainedTo(0.3, 0.0985);

            bench.watch(hours(13));

            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        }

        @Test
        void starts_again_when_the_voltage_reaches_the_limit_once_more() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .drainedTo(0.3, 0.095)
                    .watch(hours(11))
                    .cell(0.3, 0.0985)
                    .watch(seconds(30))
                    .cell(0.3, 0.095);

            bench.watch(hours(11));
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);

            bench.watch(minutes(61));
            assertThat(bench.phase()).isEqualTo(Phase.REST);
        }

        @Test
        void asks_for_hands_where_the_load_is_taken_off_by_hand() {
            PassageBench bench = PassageBench.handLoaded().draining().emptied().forgetEvents();

            bench.watch(hours(12)).watch(minutes(1));

            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.wishes()).containsExactly(Wish.ASK_TAKE_OFF);
            bench.act(Act.TAKE_OFF);
            assertThat(bench.phase()).isEqualTo(Phase.REST);
        }

        @Test
        void goes_on_undisturbed_while_a_hand_loaded_cell_waits_for_the_morning() {
            PassageBench bench = PassageBench.handLoaded()
                    .draining()
                    .emptied()
                    .watch(hours(11))
                    .forgetEvents();

            bench.watch(hours(11));

            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.raised()).isEmpty();
            assertThat(bench.wishes()).containsOnlyOnce(Wish.ASK_TAKE_OFF);
        }

        @Test
        void does_not_run_while_the_judge_is_blind() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .emptied()
                    .watch(hours(11))
                    .celsius(Double.NaN)
                    .watch(hours(3));
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);

            bench.celsius(22).watch(hours(1)).watch(minutes(3));

            assertThat(bench.phase()).isEqualTo(Phase.REST);
        }

        @Test
        void does_not_run_while_the_clock_is_odd() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .emptied()
                    .watch(hours(11))
                    .clockOdd(true)
                    .watch(hours(20));

            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        }

        @Test
        void is_twice_as_long_after_a_cell_came_back() {
            PassageBench bench = PassageBench.switched().draining().drainedTo(0.7, 0.03);
            bench.watch(hours(12)).watch(minutes(15));
            assertThat(bench.raised()).containsExactly(FindingKind.REBOUND);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);

            bench.emptied().watch(hours(23));
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);

            bench.watch(hours(1)).watch(minutes(1));
            assertThat(bench.phase()).isEqualTo(Phase.REST);
        }

        @Test
        void is_no_longer_after_a_load_that_was_taken_off_before_it_was_complete() {
            PassageBench bench = PassageBench.handLoaded()
                    .draining()
                    .act(Act.TAKE_OFF)
                    .watch(minutes(2))
                    .act(Act.PUT_ON)
                    .emptied()
                    .forgetEvents();

            bench.watch(hours(12)).watch(minutes(3));

            assertThat(bench.wishes()).containsExactly(Wish.ASK_TAKE_OFF);
        }
    }

    @Nested
    class Taken_off_early {

        @Test
        void a_full_cell_is_back_on_its_load_at_once_and_the_load_is_not_called_lost() {
            PassageBench bench = PassageBench.handLoaded().draining().forgetEvents();

            bench.act(Act.TAKE_OFF).watch(seconds(10));

            assertThat(bench.raised()).containsExactly(FindingKind.REBOUND);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.wishes()).containsExactly(Wish.ASK_PUT_ON);

            bench.act(Act.PUT_ON).watch(minutes(10));
            assertThat(bench.standing()).isEmpty();
            assertThat(bench.judge().standingWishes()).doesNotContain(Wish.ASK_PUT_ON);
        }

        @Test
        void a_nearly_empty_cell_is_drained_again_after_its_rest_because_its_hold_was_not_complete() {
            PassageBench bench = PassageBench.handLoaded()
                    .draining()
                    .emptied()
                    .watch(hours(6))
                    .act(Act.TAKE_OFF);
            assertThat(bench.phase()).isEqualTo(Phase.REST);

            bench.watch(hours(24)).watch(minutes(1));

            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.judge().reason()).contains("before its hold was complete");
        }

        @Test
        void a_switched_cell_closes_its_load_again_by_itself() {
            PassageBench bench = PassageBench.switched().draining().forgetEvents();

            bench.act(Act.TAKE_OFF).watch(seconds(10));

            assertThat(bench.raised()).containsExactly(FindingKind.REBOUND);
            assertThat(bench.wishes()).containsExactly(Wish.OPEN_LOAD, Wish.CLOSE_LOAD);
            assertThat(bench.isLoaded()).isTrue();
        }
    }

    @Nested
    class Fourteen_days {

        @Test
        void without_an_end_need_a_person() {
            PassageBench bench = PassageBench.switched().draining().drainedTo(0.4, 0.15);

            bench.watch(hours(14 * 24 - 1));
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);

            bench.watch(hours(2));
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.judge().reason()).contains("14 days");
            assertThat(bench.isLoaded()).as("it stays on its load").isTrue();
        }

        @Test
        void begin_anew_when_a_person_decides_to_go_on() {
            PassageBench bench =
                    PassageBench.switched().draining().drainedTo(0.4, 0.15).watch(hours(14 * 24 + 1));
            assertThat(bench.phase()).isEqualTo(Phase.HELD);

            bench.act(Act.DRAIN_AGAIN).watch(hours(24));

            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.isLoaded()).isTrue();
        }
    }

    @Test
    void charge_is_what_voltage_over_resistance_says() {
        PassageBench bench = PassageBench.switched().draining().drainedTo(3.7, 3.0);
        double before = bench.judge().ampereHours();

        bench.watch(hours(2));

        assertThat(bench.judge().ampereHours() - before).isBetween(0.599, 0.601);
    }

    @Test
    void charge_is_what_the_current_says_where_it_is_measured() {
        PassageBench bench = PassageBench.switched().readsAmperes(0.5).draining();
        double before = bench.judge().ampereHours();

        bench.watch(hours(2));

        assertThat(bench.judge().ampereHours() - before).isBetween(0.999, 1.001);
    }
}
