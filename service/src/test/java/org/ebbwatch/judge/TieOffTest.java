package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;
import static org.ebbwatch.judge.PassageBench.seconds;

import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.procedure.Procedure;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class TieOffTest {

    @Nested
    class The_watch {

        @Test
        void lasts_a_day_before_the_bond_may_be_parted() {
            PassageBench bench =
                    PassageBench.switched().tiedOff().watch(hours(23).plusMinutes(50));
            assertThat(bench.judge().allowed()).doesNotContain(Act.PART);

            bench.watch(minutes(10));

            assertThat(bench.wishes()).contains(Wish.ASK_PART);
            assertThat(bench.judge().allowed()).contains(Act.PART).doesNotContain(Act.RELEASE);
        }

        @Test
        void lasts_two_days_by_the_strict_procedure() {
            PassageBench bench = PassageBench.of(PassageBench.switchedCell(), Procedure.strict())
                    .draining()
                    .drainedTo(0.07, 0.03)
                    .watch(hours(12).plusMinutes(2))
                    .watch(hours(72).plusMinutes(2))
                    .act(Act.TIE_OFF);
            assertThat(bench.phase()).isEqualTo(Phase.TIE_OFF);

            bench.watch(hours(47));
            assertThat(bench.judge().allowed()).doesNotContain(Act.PART);
            bench.watch(hours(1).plusMinutes(2));
            assertThat(bench.judge().allowed()).contains(Act.PART);
        }

        @Test
        void starts_again_with_any_warmth() {
            PassageBench bench = PassageBench.switched()
                    .reference(21.5)
                    .tiedOff()
                    .watch(hours(20))
                    .warmTo(25, minutes(30));
            assertThat(bench.standing()).containsExactly(FindingKind.WARMING);
            assertThat(bench.phase()).isEqualTo(Phase.TIE_OFF);

            bench.warmTo(22, minutes(30)).watch(hours(12));
            assertThat(bench.judge().allowed()).doesNotContain(Act.PART);
            bench.watch(hours(12));
            assertThat(bench.judge().allowed()).contains(Act.PART);
        }

        @Test
        void does_not_run_without_a_temperature() {
            PassageBench bench = PassageBench.switched()
                    .tiedOff()
                    .celsius(Double.NaN)
                    .watch(hours(24))
                    .watch(minutes(10));

            assertThat(bench.standing()).containsExactly(FindingKind.SENSOR_FAULT);
            assertThat(bench.judge().allowed()).doesNotContain(Act.PART);
        }

        @Test
        void needs_no_voltage_where_only_a_thermistor_watches_the_container() {
            PassageBench bench = PassageBench.switched()
                    .tiedOff()
                    .moved()
                    .reads(Double.NaN)
                    .watch(hours(24))
                    .watch(minutes(10));

            assertThat(bench.raised()).isEmpty();
            assertThat(bench.judge().allowed()).contains(Act.PART);
        }

        @Test
        void says_nothing_about_the_cell_by_its_bonded_voltage() {
            PassageBench bench = PassageBench.switched().soaked();

            assertThat(bench.judge().allowed()).doesNotContain(Act.RELEASE);
            assertThat(bench.act(Act.RELEASE).phase()).isEqualTo(Phase.TIE_OFF);
        }
    }

    @Nested
    class TIE_LOOSE {

        @Test
        void is_raised_when_the_bond_has_a_voltage_and_the_watch_stands() {
            PassageBench bench = PassageBench.switched()
                    .tiedOff()
                    .watch(hours(10))
                    .reads(0.03)
                    .watch(hours(20));

            assertThat(bench.standing()).containsExactly(FindingKind.TIE_LOOSE);
            assertThat(bench.phase()).isEqualTo(Phase.TIE_OFF);
            assertThat(bench.judge().remainingMillis()).isGreaterThan(hours(13).toMillis());
        }

        @Test
        void is_not_raised_by_a_single_reading() {
            PassageBench bench = PassageBench.switched().tiedOff().watch(hours(1));

            bench.reads(0.03).watch(seconds(1)).readsTheCellAgain().watch(minutes(1));

            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void is_not_raised_where_the_uncertainty_explains_it() {
            PassageBench bench = PassageBench.switched().tiedOff().reads(0.0215).watch(minutes(10));

            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void clears_when_the_bond_is_tightened_and_the_watch_goes_on() {
            PassageBench bench = PassageBench.switched()
                    .tiedOff()
                    .watch(hours(10))
                    .reads(0.03)
                    .watch(minutes(10))
                    .readsTheCellAgain()
                    .watch(seconds(5));
            assertThat(bench.standing()).isEmpty();

            bench.watch(hours(14)).watch(minutes(10));
            assertThat(bench.judge().allowed()).contains(Act.PART);
        }

        @Test
        void does_not_stand_once_the_cell_is_back_on_its_load() {
            PassageBench bench = PassageBench.switched()
                    .tiedOff()
                    .reads(0.03)
                    .watch(seconds(5))
                    .readsTheCellAgain()
                    .act(Act.SPARK)
                    .watch(seconds(5));

            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.standing()).isEmpty();
        }

        @Test
        void of_a_bond_parted_before_it_was_said_does_not_stand_when_it_is_said() {
            PassageBench bench = PassageBench.switched().soaked();
            assertThat(bench.judge().allowed()).contains(Act.PART);
            bench.partQuietly().watch(seconds(20));
            assertThat(bench.standing()).containsExactly(FindingKind.TIE_LOOSE);

            bench.act(Act.PART).watch(seconds(5));

            assertThat(bench.standing()).isEmpty();
            assertThat(bench.watch(minutes(62)).judge().allowed()).contains(Act.RELEASE);
        }
    }

    @Test
    void a_spark_puts_it_back_on_its_load_for_a_longer_hold() {
        PassageBench bench = PassageBench.switched()
                .tiedOff()
                .act(Act.SPARK)
                .watch(seconds(5))
                .emptied();

        assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        assertThat(bench.isLoaded()).isTrue();
        assertThat(bench.judge().remainingMillis()).isGreaterThan(hours(23).toMillis());
    }

    @Test
    void a_bond_may_not_be_made_before_the_rest_is_over() {
        PassageBench bench = PassageBench.switched().resting().watch(hours(12));
        assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);

        bench.act(Act.TIE_OFF).watch(minutes(1));

        assertThat(bench.phase()).isEqualTo(Phase.REST);
    }

    @Test
    void a_bond_may_not_be_made_while_the_judge_is_blind() {
        PassageBench bench = PassageBench.switched().rested();
        assertThat(bench.judge().allowed()).contains(Act.TIE_OFF);

        bench.celsius(Double.NaN).watch(seconds(10));
        assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);

        bench.celsius(22).watch(minutes(3));
        assertThat(bench.judge().allowed()).contains(Act.TIE_OFF);
    }

    @Test
    void a_bond_may_not_be_made_while_the_board_is_silent() {
        PassageBench bench =
                PassageBench.switched().rested().nothingSeenFor(seconds(6)).silence();

        assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);
    }

    @Test
    void a_bond_may_not_be_made_between_a_restart_of_the_board_and_its_first_scan() {
        PassageBench bench = PassageBench.switched().rested().reboot();

        assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);
    }

    @Test
    void a_bond_may_not_be_made_right_after_a_gap_in_which_the_cell_may_have_been_swapped() {
        PassageBench bench = PassageBench.switched()
                .rested()
                .gap(minutes(5))
                .swapFor(3.9, 3.8)
                .watch(seconds(2));

        assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);
        assertThat(bench.act(Act.TIE_OFF).phase()).isNotEqualTo(Phase.TIE_OFF);
    }
}
