package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;
import static org.ebbwatch.judge.PassageBench.seconds;

import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.procedure.Procedure;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class RestTest {

    @Test
    void a_cell_that_stays_below_the_limit_for_a_day_may_be_tied_off() {
        PassageBench bench = PassageBench.switched().resting();
        bench.watch(hours(23).plusMinutes(40));
        assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);

        bench.watch(minutes(20));

        assertThat(bench.wishes()).contains(Wish.ASK_TIE_OFF);
        assertThat(bench.judge().allowed()).contains(Act.TIE_OFF);
        assertThat(bench.raised()).isEmpty();
        assertThat(bench.act(Act.TIE_OFF).phase()).isEqualTo(Phase.TIE_OFF);
    }

    @Test
    void strict_wants_three_days_below_a_tenth_of_a_volt() {
        PassageBench bench = PassageBench.of(PassageBench.switchedCell(), Procedure.strict())
                .draining()
                .drainedTo(0.07, 0.03)
                .watch(hours(12))
                .watch(minutes(2));
        assertThat(bench.phase()).isEqualTo(Phase.REST);

        bench.watch(hours(71));
        assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);

        bench.watch(hours(1)).watch(minutes(3));
        assertThat(bench.judge().allowed()).contains(Act.TIE_OFF);
    }

    @Nested
    class A_cell_that_comes_back {

        @Test
        void above_the_limit_goes_back_on_its_load() {
            PassageBench bench = PassageBench.switched().draining().drainedTo(0.55, 0.03);

            bench.watch(hours(12)).watch(minutes(30));

            assertThat(bench.raised()).containsExactly(FindingKind.REBOUND);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.isLoaded()).isTrue();
            assertThat(bench.standing()).as("on its load it has not come back").isEmpty();
        }

        @Test
        void in_a_single_reading_has_not_come_back() {
            PassageBench bench = PassageBench.switched().resting().watch(hours(1));

            bench.reads(0.6).watch(seconds(1)).readsTheCellAgain().watch(minutes(1));

            assertThat(bench.raised()).isEmpty();
            assertThat(bench.phase()).isEqualTo(Phase.REST);
        }

        @Test
        void just_below_the_limit_stays_off() {
            PassageBench bench = PassageBench.switched().draining().drainedTo(0.49, 0.03);

            bench.watch(hours(12)).watch(hours(2));

            assertThat(bench.raised()).isEmpty();
            assertThat(bench.phase()).isEqualTo(Phase.REST);
        }

        @Test
        void below_the_limit_but_not_with_its_uncertainty_goes_back() {
            PassageBench bench = PassageBench.switched().draining().drainedTo(0.4995, 0.03);

            bench.watch(hours(12)).watch(minutes(30));

            assertThat(bench.raised()).containsExactly(FindingKind.REBOUND);
        }

        @Test
        void at_the_end_of_its_rest_still_goes_back() {
            PassageBench bench = PassageBench.switched().rested();
            assertThat(bench.judge().allowed()).contains(Act.TIE_OFF);

            bench.swapFor(0.55, 0.03).watch(seconds(6));

            assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        }

        @Test
        void asks_for_hands_where_the_load_is_put_on_by_hand() {
            PassageBench bench = PassageBench.handLoaded()
                    .draining()
                    .drainedTo(0.8, 0.03)
                    .watch(hours(12))
                    .act(Act.TAKE_OFF)
                    .watch(minutes(10));

            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.wishes()).contains(Wish.ASK_PUT_ON).doesNotContain(Wish.CLOSE_LOAD);
        }
    }

    @Nested
    class The_forecast {

        @Test
        void sends_a_slow_cell_back_long_before_it_is_over_the_limit() {
            PassageBench bench = PassageBench.switched()
                    .recoveringOver(4 * 3600)
                    .draining()
                    .drainedTo(0.9, 0.03)
                    .watch(hours(12))
                    .watch(minutes(1));
            assertThat(bench.phase()).isEqualTo(Phase.REST);

            bench.watch(hours(2));

            assertThat(bench.raised()).containsExactly(FindingKind.REBOUND);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.judge().reason()).contains("will come back");
        }

        @Test
        void sends_a_cell_back_after_ten_minutes_where_it_is_95_percent_sure_and_tells_the_interval() {
            PassageBench bench = PassageBench.switched()
                    .recoveringOver(1_800)
                    .draining()
                    .drainedTo(0.9, 0.03)
                    .watch(hours(12))
                    .watch(minutes(1));
            assertThat(bench.watch(minutes(8)).phase()).isEqualTo(Phase.REST);

            bench.watch(minutes(2));

            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.judge().reason()).contains("95 % sure of 0.9").contains("to 3.700 V");
        }

        @Test
        void leaves_a_slow_cell_alone_that_ends_below_the_limit() {
            PassageBench bench = PassageBench.switched()
                    .recoveringOver(4 * 3600)
                    .draining()
                    .drainedTo(0.46, 0.03)
                    .watch(hours(12))
                    .watch(minutes(1));

            bench.watch(hours(25));

            assertThat(bench.raised()).isEmpty();
            assertThat(bench.judge().allowed()).contains(Act.TIE_OFF);
        }

        @Test
        void never_shortens_a_rest() {
            PassageBench bench =
                    PassageBench.switched().draining().drainedTo(0.05, 0.03).watch(hours(12));

            bench.watch(hours(23));

            assertThat(bench.phase()).isEqualTo(Phase.REST);
            assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);
        }
    }

    @Nested
    class Two_holds_that_bring_no_lower_rest {

        @Test
        void hold_the_cell() {
            PassageBench bench = PassageBench.switched().draining().drainedTo(0.9, 0.03);

            bench.watch(hours(12)).watch(hours(24)).watch(minutes(30));
            assertThat(bench.phase()).as("one longer hold brought nothing").isEqualTo(Phase.DRAIN);
            bench.watch(hours(48)).watch(minutes(30));

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.judge().reason()).contains("no lower rest");
            assertThat(bench.isLoaded()).isFalse();
        }

        @Test
        void are_not_counted_while_each_hold_keeps_it_down_longer() {
            PassageBench bench =
                    PassageBench.switched().draining().drainedTo(0.9, 0.03).recoveringOver(120);

            bench.watch(hours(12)).watch(minutes(20));
            bench.recoveringOver(360).watch(hours(24)).watch(minutes(20));
            bench.recoveringOver(900).watch(hours(48)).watch(minutes(20));

            assertThat(bench.raised()).containsExactly(FindingKind.REBOUND, FindingKind.REBOUND, FindingKind.REBOUND);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        }

        @Test
        void are_counted_anew_after_a_person_decided_to_go_on() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .drainedTo(0.9, 0.03)
                    .watch(hours(84))
                    .watch(hours(2));
            assertThat(bench.phase()).isEqualTo(Phase.HELD);

            bench.act(Act.DRAIN_AGAIN).watch(hours(12 * 8)).watch(hours(1));

            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        }
    }

    @Test
    void a_spark_when_the_leads_are_touched_together_puts_it_back_on_its_load() {
        PassageBench bench = PassageBench.switched().rested().act(Act.SPARK);

        assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        assertThat(bench.watch(seconds(5)).isLoaded()).isTrue();
    }

    @Test
    void a_voltage_that_sinks_over_hours_is_held_because_something_draws_on_the_cell() {
        PassageBench bench = PassageBench.switched().resting();

        sink(bench, 0.30, 0.20);

        assertThat(bench.phase()).isEqualTo(Phase.HELD);
        assertThat(bench.judge().reason()).contains("something draws on the cell");
        assertThat(bench.raised()).isEmpty();
        assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);
    }

    @Test
    void a_voltage_that_follows_the_room_by_some_millivolts_does_not_sink() {
        PassageBench bench = PassageBench.switched().resting();

        sink(bench, 0.30, 0.29);

        assertThat(bench.phase()).isEqualTo(Phase.REST);
    }

    /** Pinned by 23 ohms across it, as a simulated slow cell was. */
    @Test
    void a_few_millivolts_that_sink_by_a_quarter_are_held_too_where_the_room_stands() {
        PassageBench bench =
                PassageBench.switched().draining().drainedTo(0.0061, 0.0012).watch(hours(13));
        assertThat(bench.phase()).isEqualTo(Phase.REST);

        sink(bench, 0.0061, 0.0044);

        assertThat(bench.phase()).isEqualTo(Phase.HELD);
        assertThat(bench.judge().reason()).contains("something draws on the cell");
    }

    @Test
    void a_few_millivolts_that_follow_a_cooling_room_are_not() {
        PassageBench bench =
                PassageBench.switched().draining().drainedTo(0.0061, 0.0012).watch(hours(13));
        for (int step = 0; step <= 200; step++) {
            double cooler = 3.0 * step / 200;
            bench.ambient(21 - cooler)
                    .celsius(22 - cooler)
                    .cell(0.0061 - 0.0006 * cooler, 0.0012)
                    .watch(minutes(3));
        }
        assertThat(bench.phase()).isEqualTo(Phase.REST);
    }

    /** Sinks evenly over ten hours. */
    private static void sink(PassageBench bench, double from, double to) {
        for (int step = 0; step <= 200; step++) {
            bench.cell(from + (to - from) * step / 200, 0.03).watch(minutes(3));
        }
    }

    @Test
    void a_cell_that_warms_is_rested_again() {
        PassageBench bench = PassageBench.switched()
                .resting()
                .watch(hours(20))
                .warmTo(28, minutes(30))
                .warmTo(22, minutes(30))
                .watch(hours(10));

        assertThat(bench.raised()).containsExactly(FindingKind.WARMING);
        assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);
        assertThat(bench.watch(hours(14)).judge().allowed()).contains(Act.TIE_OFF);
    }
}
