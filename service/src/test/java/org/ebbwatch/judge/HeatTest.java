package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;
import static org.ebbwatch.judge.PassageBench.seconds;

import java.time.Duration;
import java.util.List;
import org.ebbwatch.judge.procedure.BuiltIn;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class HeatTest {

    @Nested
    class HOT {

        @Test
        void is_raised_at_sixty_degrees_in_DRAIN_and_opens_the_load() {
            PassageBench bench =
                    PassageBench.switched().draining().celsius(60.1).watch(seconds(2));

            assertThat(bench.standing()).contains(FindingKind.HOT);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.isLoaded()).isFalse();
        }

        @Test
        void is_raised_at_sixty_degrees_in_every_other_phase() {
            for (PassageBench bench : List.of(
                    PassageBench.switched().checkedIn(),
                    PassageBench.switched().resting(),
                    PassageBench.switched().tiedOff(),
                    PassageBench.switched().parted(),
                    PassageBench.switched().cell(0, 0).checkedIn().act(Act.PUT_ON))) {
                bench.celsius(60.1).watch(seconds(1));
                assertThat(bench.standing()).contains(FindingKind.HOT);
                assertThat(bench.phase()).isEqualTo(Phase.HELD);
            }
        }

        @Test
        void is_not_raised_just_below() {
            PassageBench bench = PassageBench.switched()
                    .ambient(50)
                    .celsius(59)
                    .checkedIn()
                    .act(Act.PUT_ON)
                    .watch(minutes(20))
                    .warmTo(59.9, minutes(30));

            assertThat(bench.raised()).doesNotContain(FindingKind.HOT);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        }

        @Test
        void is_raised_when_the_cell_heats_half_a_kelvin_a_second() {
            PassageBench bench = PassageBench.switched().draining();
            bench.watchWhile(seconds(5), at -> bench.celsius(22 + 0.55 * at));

            assertThat(bench.standing()).contains(FindingKind.HOT);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void is_raised_at_half_that_rate_where_the_procedure_says_so() {
            for (BuiltIn rule : BuiltIn.values()) {
                PassageBench bench = PassageBench.of(PassageBench.switchedCell(), rule.procedure())
                        .draining();
                bench.watchWhile(seconds(12), at -> bench.celsius(22 + 0.3 * at));

                assertThat(bench.standing().contains(FindingKind.HOT))
                        .as(rule.key())
                        .isEqualTo(rule == BuiltIn.LARGE || rule == BuiltIn.DAMAGED);
            }
        }

        @Test
        void is_raised_at_ten_scans_a_second_too() {
            PassageBench bench = PassageBench.switched().draining();
            for (int tenth = 1; tenth <= 60; tenth++) {
                bench.celsius(22 + 0.06 * tenth).watch(Duration.ofMillis(100), 100);
            }

            assertThat(bench.standing()).contains(FindingKind.HOT);
        }

        @Test
        void is_not_raised_for_a_quick_rise_of_less_than_two_kelvin() {
            PassageBench bench = PassageBench.switched().draining();
            bench.watchWhile(seconds(3), at -> bench.celsius(22 + 0.6 * at)).watch(minutes(2));

            assertThat(bench.raised()).doesNotContain(FindingKind.HOT);
        }

        @Test
        void is_not_raised_for_one_reading_that_jumps() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .celsius(27)
                    .watch(seconds(1))
                    .celsius(22)
                    .watch(minutes(1));

            assertThat(bench.raised()).doesNotContain(FindingKind.HOT);
        }

        @Test
        void is_raised_in_tie_off_five_kelvin_over_the_dummy() {
            PassageBench bench = PassageBench.switched().reference(21).tiedOff();
            bench.warmTo(25.8, minutes(20));
            assertThat(bench.standing()).containsExactly(FindingKind.WARMING);

            bench.celsius(26.2).watch(seconds(2));

            assertThat(bench.standing()).contains(FindingKind.HOT);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void is_raised_in_tie_off_at_forty_five_degrees() {
            PassageBench bench = PassageBench.switched()
                    .reference(43)
                    .ambient(43)
                    .tiedOff()
                    .celsius(45.1)
                    .watch(seconds(1));

            assertThat(bench.standing()).contains(FindingKind.HOT);
        }

        @Test
        void takes_wider_limits_in_tie_off_where_there_is_only_ambient() {
            PassageBench bench = PassageBench.switched().ambient(21).tiedOff();

            bench.warmTo(25.8, minutes(60));
            assertThat(bench.raised()).as("4.8 K over ambient").isEmpty();
            bench.warmTo(26.3, minutes(10));
            assertThat(bench.standing()).containsExactly(FindingKind.WARMING);
            bench.warmTo(28.3, minutes(10));
            assertThat(bench.standing()).contains(FindingKind.HOT);
        }

        @Test
        void stands_until_a_person_decides_and_not_before_an_hour_near_ambient() {
            PassageBench bench = PassageBench.switched().draining().celsius(61).watch(minutes(1));
            bench.watchWhile(hours(1), at -> bench.celsius(22.5 + 38.5 * Math.exp(-at / 500)));
            assertThat(bench.standing()).contains(FindingKind.HOT);

            // Below ambient + 3 K since minute 27.
            bench.celsius(22.5).watch(minutes(26));
            assertThat(bench.judge().allowed()).doesNotContain(Act.DRAIN_AGAIN);
            bench.watch(minutes(15));
            assertThat(bench.judge().allowed()).contains(Act.DRAIN_AGAIN);
            assertThat(bench.standing()).contains(FindingKind.HOT);

            bench.act(Act.DRAIN_AGAIN).watch(minutes(1));
            assertThat(bench.standing()).doesNotContain(FindingKind.HOT);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        }

        @Test
        void is_not_calm_because_nobody_looked() {
            PassageBench bench = PassageBench.switched().draining().celsius(61).watch(minutes(1));

            bench.celsius(22).watch(minutes(5)).gap(hours(3)).watch(minutes(30));

            assertThat(bench.judge().allowed()).doesNotContain(Act.DRAIN_AGAIN);
        }

        @Test
        void trips_even_in_an_announced_window() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .announce(minutes(5))
                    .celsius(60.5)
                    .watch(seconds(1));

            assertThat(bench.standing()).contains(FindingKind.HOT);
        }
    }

    @Nested
    class WARMING {

        @Test
        void is_raised_in_DRAIN_fifteen_kelvin_over_ambient() {
            PassageBench bench = PassageBench.switched().draining().warmTo(35.5, minutes(30));
            assertThat(bench.standing()).as("14.5 K").isEmpty();

            bench.warmTo(36.3, minutes(3));

            assertThat(bench.standing()).containsExactly(FindingKind.WARMING);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.isLoaded()).isTrue();
        }

        @Test
        void is_raised_in_DRAIN_at_forty_five_degrees() {
            PassageBench bench = PassageBench.switched()
                    .ambient(34)
                    .celsius(40)
                    .checkedIn()
                    .act(Act.PUT_ON)
                    .watch(minutes(3));
            bench.warmTo(44.5, minutes(20));
            assertThat(bench.standing()).isEmpty();
            bench.warmTo(45.2, minutes(3));

            assertThat(bench.standing()).contains(FindingKind.WARMING);
        }

        @Test
        void is_raised_in_REST_five_kelvin_over_ambient() {
            PassageBench bench =
                    PassageBench.switched().resting().watch(hours(2)).warmTo(25.8, minutes(60));
            assertThat(bench.standing()).as("4.8 K").isEmpty();

            bench.warmTo(26.2, minutes(3));

            assertThat(bench.standing()).containsExactly(FindingKind.WARMING);
            assertThat(bench.phase()).isEqualTo(Phase.REST);
        }

        @Test
        void is_not_raised_in_REST_for_the_warmth_of_the_load_that_has_just_come_off() {
            PassageBench bench = PassageBench.handLoaded().draining();
            bench.watchWhile(minutes(30), at -> bench.celsius(22 + 8 * Math.min(1, at / 1500)));
            bench.emptied().watch(hours(12)).act(Act.TAKE_OFF);
            bench.watchWhile(hours(1), at -> bench.celsius(22 + 8 * Math.exp(-at / 1200)));

            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void is_raised_when_the_rise_leads_to_hot_within_ten_minutes() {
            PassageBench bench = PassageBench.switched().draining();
            bench.watchWhile(seconds(150), at -> bench.celsius(22 + 0.07 * at));

            assertThat(bench.standing()).containsExactly(FindingKind.WARMING);
        }

        @Test
        void is_not_raised_for_a_rise_that_takes_longer() {
            PassageBench bench = PassageBench.switched().draining();
            bench.watchWhile(seconds(180), at -> bench.celsius(22 + 0.04 * at));

            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void is_not_raised_when_a_window_is_opened_and_the_room_cools_under_the_cell() {
            PassageBench bench = PassageBench.switched().resting().watch(hours(2));
            bench.watchWhile(minutes(4), at -> bench.ambient(21 - 3 * at / 240).celsius(22 - 0.3 * at / 240));
            bench.warmTo(19.5, minutes(60));

            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void is_not_raised_when_the_sun_warms_the_room_and_the_cell_follows() {
            PassageBench bench = PassageBench.switched().resting().watch(hours(2));
            bench.watchWhile(
                    minutes(20), at -> bench.ambient(21 + 6 * at / 1200).celsius(22 + 3 * at / 1200));

            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void is_not_raised_for_the_warmth_of_its_own_current_in_DRAIN() {
            PassageBench bench = PassageBench.switched().draining();
            bench.watchWhile(minutes(60), at -> bench.celsius(22 + 6 * (1 - Math.exp(-at / 1100))));

            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void is_not_raised_for_the_jump_of_a_sensor_that_was_blind() {
            PassageBench bench =
                    PassageBench.switched().draining().watch(minutes(10)).celsius(Double.NaN);
            bench.watch(minutes(5)).celsius(27).watch(minutes(10));

            assertThat(bench.raised()).containsExactly(FindingKind.SENSOR_FAULT);
        }

        @Test
        void clears_when_the_cell_has_cooled() {
            PassageBench bench = PassageBench.switched().draining().warmTo(36.5, minutes(30));
            bench.watchWhile(minutes(20), at -> bench.celsius(25 + 11.5 * Math.exp(-at / 500)));

            assertThat(bench.standing()).isEmpty();
        }

        @Test
        void does_not_clear_because_the_ambient_sensor_is_lost() {
            PassageBench bench = PassageBench.switched().draining().warmTo(36.5, minutes(30));
            bench.ambient(Double.NaN).watch(minutes(10));

            assertThat(bench.standing()).contains(FindingKind.WARMING, FindingKind.SENSOR_FAULT);
        }

        @Test
        void does_not_flutter_around_its_limit() {
            PassageBench bench = PassageBench.switched().draining().warmTo(35.7, minutes(30));
            for (int swing = 0; swing < 20; swing++) {
                bench.celsius(36.2).watch(minutes(2)).celsius(35.7).watch(minutes(2));
            }

            assertThat(bench.raised()).containsExactly(FindingKind.WARMING);
        }

        @Test
        void pauses_in_an_announced_window() {
            PassageBench bench =
                    PassageBench.switched().resting().watch(hours(2)).announce(minutes(3));
            bench.watchWhile(seconds(60), at -> bench.celsius(Math.min(32, 22 + at)));
            bench.watchWhile(seconds(100), at -> bench.celsius(22 + 10 * Math.exp(-at / 13)));
            bench.celsius(22).watch(minutes(10));

            assertThat(bench.raised()).isEmpty();
        }
    }

    @Nested
    class AMBIENT_HIGH {

        @Test
        void is_raised_above_thirty_five_degrees_and_clears_below() {
            PassageBench bench = PassageBench.switched()
                    .ambient(28)
                    .draining()
                    .warmTo(36, minutes(30))
                    .ambient(35.5)
                    .watch(minutes(1));
            assertThat(bench.standing()).containsExactly(FindingKind.AMBIENT_HIGH);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.isLoaded()).isTrue();

            bench.ambient(33).watch(minutes(1));
            assertThat(bench.standing()).isEmpty();
        }

        @Test
        void is_not_raised_by_a_few_noisy_readings() {
            PassageBench bench = PassageBench.switched().ambient(28).draining().warmTo(36, minutes(30));
            for (int second = 0; second < 1_200; second++) {
                bench.ambient(second % 40 == 0 ? 35.4 : 34.2).watch(seconds(1));
            }

            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void is_not_raised_in_a_warm_room_below_that() {
            PassageBench bench = PassageBench.switched()
                    .ambient(28)
                    .draining()
                    .warmTo(35, minutes(30))
                    .ambient(34.5)
                    .watch(minutes(5));

            assertThat(bench.raised()).isEmpty();
        }
    }
}
