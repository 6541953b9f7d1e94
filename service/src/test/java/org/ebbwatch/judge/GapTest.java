package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;
import static org.ebbwatch.judge.PassageBench.seconds;

import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class GapTest {

    @Nested
    class A_gap_up_to_a_quarter_of_an_hour {

        @Test
        void pauses_the_rest() {
            PassageBench bench = PassageBench.switched().resting().watch(hours(20));
            long remaining = bench.judge().remainingMillis();

            bench.gap(minutes(15)).watch(seconds(1));

            assertThat(bench.judge().remainingMillis()).isBetween(remaining - 2_000, remaining);
        }

        @Test
        void pauses_the_tie_off_but_the_last_twelve_hours_must_be_unbroken() {
            PassageBench bench =
                    PassageBench.switched().tiedOff().watch(hours(20)).gap(minutes(10));
            bench.watch(hours(5));
            assertThat(bench.judge().remainingMillis())
                    .isBetween(hours(6).toMillis(), hours(7).plusMinutes(1).toMillis());
            assertThat(bench.judge().allowed()).as("only 5 h unbroken").doesNotContain(Act.PART);

            bench.watch(hours(7)).watch(minutes(5));
            assertThat(bench.judge().allowed()).contains(Act.PART);
        }

        @Test
        void early_in_the_tie_off_costs_no_more_than_itself() {
            PassageBench bench = PassageBench.switched()
                    .tiedOff()
                    .watch(hours(6))
                    .gap(minutes(10))
                    .watch(hours(18));

            assertThat(bench.judge().allowed()).contains(Act.PART);
        }

        @Test
        void in_the_last_hour_breaks_the_twelve_hours_before_release() {
            PassageBench bench = PassageBench.switched()
                    .parted()
                    .watch(minutes(30))
                    .gap(minutes(5))
                    .watch(hours(2));
            assertThat(bench.judge().allowed()).doesNotContain(Act.RELEASE);

            bench.watch(hours(10)).watch(minutes(5));
            assertThat(bench.judge().allowed()).contains(Act.RELEASE);
        }

        @Test
        void after_everything_is_done_still_breaks_them() {
            PassageBench bench =
                    PassageBench.switched().releasable().gap(minutes(5)).watch(minutes(5));

            assertThat(bench.judge().allowed()).doesNotContain(Act.RELEASE);
        }

        @Test
        void takes_back_what_may_be_done_until_it_may_be_done_again() {
            PassageBench bench =
                    PassageBench.switched().soaked().watch(minutes(5)).forgetEvents();

            bench.gap(minutes(5)).watch(minutes(5));
            assertThat(bench.judge().standingWishes()).doesNotContain(Wish.ASK_PART);
            bench.watch(hours(12));

            assertThat(bench.wishes()).contains(Wish.ASK_PART);
        }
    }

    @Nested
    class A_longer_gap {

        @Test
        void starts_the_rest_again() {
            PassageBench bench = PassageBench.switched().resting().watch(hours(20));

            bench.gap(minutes(16)).watch(minutes(1));

            assertThat(bench.judge().remainingMillis()).isGreaterThan(hours(23).toMillis());
        }

        @Test
        void takes_back_that_the_cell_may_be_tied_off() {
            PassageBench bench = PassageBench.switched().rested().gap(hours(1)).watch(minutes(1));

            assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);
            assertThat(bench.watch(hours(24)).judge().allowed()).contains(Act.TIE_OFF);
        }

        @Test
        void starts_the_tie_off_again() {
            PassageBench bench = PassageBench.switched()
                    .tiedOff()
                    .watch(hours(23))
                    .gap(minutes(16))
                    .watch(hours(13));

            assertThat(bench.judge().allowed()).doesNotContain(Act.PART);
        }

        @Test
        void starts_the_hold_again() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .emptied()
                    .watch(hours(11))
                    .gap(hours(1));

            bench.watch(hours(11));

            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        }

        @Test
        void is_measured_by_the_most_it_may_have_lasted() {
            PassageBench bench = PassageBench.switched().resting().watch(hours(20));

            bench.fold(new Entry.Gap(bench.millis(), 0, hours(1).toMillis())).watch(minutes(1));

            assertThat(bench.judge().remainingMillis()).isGreaterThan(hours(23).toMillis());
        }
    }

    @Nested
    class Time_nobody_spoke_of {

        @Test
        void between_two_scans_is_a_gap_all_the_same() {
            PassageBench bench = PassageBench.switched().resting().watch(hours(20));
            long remaining = bench.judge().remainingMillis();

            bench.nothingSeenFor(minutes(10)).watch(seconds(1));
            assertThat(bench.judge().remainingMillis()).isBetween(remaining - 2_000, remaining);

            bench.nothingSeenFor(minutes(16)).watch(minutes(1));
            assertThat(bench.judge().remainingMillis()).isGreaterThan(hours(23).toMillis());
        }

        @Test
        void after_a_silence_is_not_watched() {
            PassageBench bench = PassageBench.switched().resting().watch(hours(20));
            long remaining = bench.judge().remainingMillis();

            bench.nothingSeenFor(seconds(6))
                    .silence()
                    .nothingSeenFor(minutes(9))
                    .watch(seconds(1));

            assertThat(bench.judge().remainingMillis()).isBetween(remaining - 2_000, remaining);
        }

        @Test
        void takes_no_charge_with_it() {
            PassageBench bench = PassageBench.switched().draining();
            double before = bench.judge().ampereHours();

            bench.nothingSeenFor(minutes(10)).watch(seconds(1)).gap(hours(2)).watch(seconds(1));

            assertThat(bench.judge().ampereHours()).isEqualTo(before);
        }
    }

    @Nested
    class Another_cell_after_a_gap {

        @Test
        void full_where_an_empty_one_rested_is_held_and_its_load_stays_open() {
            PassageBench bench = PassageBench.switched()
                    .rested()
                    .gap(minutes(10))
                    .swapFor(3.9, 3.8)
                    .watch(minutes(2));

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.judge().reason()).contains("another cell");
            assertThat(bench.isLoaded()).isFalse();
            assertThat(bench.judge().isLocked()).isTrue();
            assertThat(bench.wishes()).as("since it rested").endsWith(Wish.ASK_TIE_OFF);
        }

        @Test
        void empty_where_a_full_one_stood_is_held_and_not_drained_as_the_proven_one() {
            PassageBench bench = PassageBench.switched()
                    .checkedIn()
                    .gap(minutes(10))
                    .swapFor(0.2, 0.01)
                    .watch(minutes(2));

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.judge().allowed()).doesNotContain(Act.DRAIN_AGAIN);
        }

        @Test
        void full_where_an_empty_one_was_on_its_load_is_held() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .emptied()
                    .watch(hours(6))
                    .gap(hours(1))
                    .cell(3.9, 3.8)
                    .watch(minutes(15));

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.judge().reason()).contains("another cell");
        }

        @Test
        void full_where_an_empty_one_was_on_its_load_is_not_loaded_again_after_a_power_cut() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .emptied()
                    .watch(hours(6))
                    .gap(hours(1))
                    .reboot()
                    .swapFor(4.1, 4.0)
                    .watch(minutes(2));

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.isLoaded()).isFalse();
        }

        @Test
        void empty_where_an_empty_one_was_parted_is_held() {
            PassageBench bench = PassageBench.switched()
                    .parted()
                    .watch(minutes(30))
                    .gap(minutes(5))
                    .swapFor(0.1, 0.01);

            bench.watch(minutes(2));

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void full_where_an_empty_one_was_parted_never_closes_a_load() {
            PassageBench bench = PassageBench.switched()
                    .parted()
                    .watch(minutes(50))
                    .gap(minutes(5))
                    .swapFor(3.9, 3.8);

            bench.forgetEvents().watch(minutes(5)).act(Act.RELEASE);

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.wishes()).doesNotContain(Wish.CLOSE_LOAD);
        }
    }

    @Nested
    class The_same_cell_after_a_gap {

        @Test
        void that_went_on_draining_goes_on() {
            PassageBench bench =
                    PassageBench.switched().draining().drainedTo(3.5, 3.4).watch(hours(1));

            bench.gap(hours(1)).cell(3.4, 3.3).watch(hours(1));

            assertThat(bench.raised()).containsOnly(FindingKind.SILENT);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        }

        @Test
        void that_was_off_its_load_in_a_power_cut_goes_back_on_it() {
            PassageBench bench =
                    PassageBench.switched().draining().drainedTo(3.5, 3.4).watch(hours(1));

            bench.gap(hours(3)).reboot().watch(hours(1));

            assertThat(bench.raised()).containsOnly(FindingKind.SILENT);
            assertThat(bench.isLoaded()).isTrue();
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        }

        @Test
        void that_recovered_in_a_power_cut_goes_back_on_its_load() {
            PassageBench bench =
                    PassageBench.switched().draining().drainedTo(2.4, 0.05).watch(hours(1));

            bench.gap(hours(3)).reboot().swapFor(2.4, 0.05).watch(hours(1));

            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.isLoaded()).isTrue();
        }

        @Test
        void that_came_back_a_little_more_while_it_rested_rests_on() {
            PassageBench bench = PassageBench.switched()
                    .resting()
                    .watch(hours(2))
                    .gap(minutes(10))
                    .cell(0.36, 0.03)
                    .watch(hours(1));

            assertThat(bench.raised()).containsOnly(FindingKind.SILENT);
            assertThat(bench.phase()).isEqualTo(Phase.REST);
        }

        @Test
        void that_came_back_over_the_limit_goes_back_on_its_load() {
            PassageBench bench = PassageBench.switched()
                    .resting()
                    .watch(hours(2))
                    .gap(minutes(10))
                    .swapFor(0.51, 0.03);

            bench.watch(minutes(2));

            assertThat(bench.raised()).contains(FindingKind.REBOUND);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        }
    }

    @Nested
    class Two_gaps_on_a_strong_load {

        @Test
        void from_just_above_three_volts_may_lead_over_the_knee() {
            var strong = new CellCard("A1", Chemistry.LAYERED_OXIDE, 3.0, 3.7, true, false);
            PassageBench bench = PassageBench.of(strong).draining().drainedTo(3.2, 3.008);

            bench.gap(seconds(530))
                    .watch(seconds(5))
                    .gap(seconds(600))
                    .collapsesTo(3.0, 1.183)
                    .watch(minutes(15));

            assertThat(bench.raised()).containsOnly(FindingKind.SILENT);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        }
    }

    @Nested
    class Many_short_gaps_that_follow_each_other {

        @Test
        void do_not_make_a_cell_that_drains_between_them_another_cell() {
            PassageBench bench = PassageBench.switched().draining();
            for (int burst = 0; burst < 96; burst++) {
                double onLoad = burst < 40 ? 3.6 : 3.6 - (burst - 40) * 0.06;
                bench.cell(3.7, onLoad).gap(seconds(12)).watch(minutes(5), 2_000);
            }

            bench.watch(hours(1));

            assertThat(bench.raised()).containsOnly(FindingKind.SILENT);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        }

        @Test
        void do_not_hide_a_fuller_cell_put_in_the_place_of_this_one() {
            PassageBench bench = PassageBench.switched().draining().emptied();
            for (int burst = 0; burst < 12; burst++) {
                bench.gap(seconds(12)).watch(minutes(5), 2_000);
            }

            bench.gap(seconds(12)).swapFor(3.9, 3.8).watch(minutes(20));

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.judge().reason()).contains("another cell?");
        }
    }
}
