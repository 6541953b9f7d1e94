package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;
import static org.ebbwatch.judge.PassageBench.seconds;

import org.ebbwatch.judge.Entry.Suspicion;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class SensorTest {

    @Nested
    class A_temperature {

        @ParameterizedTest
        @ValueSource(doubles = {Double.NaN, -127, 85.0, 3.4e38, -3.4e38, Double.POSITIVE_INFINITY})
        void that_cannot_be_is_a_fault_and_never_heat(double celsius) {
            PassageBench bench = PassageBench.switched().draining();
            bench.celsiusExactly(celsius).watch(seconds(10));

            assertThat(bench.standing()).containsExactly(FindingKind.SENSOR_FAULT);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.isLoaded()).as("kept in DRAIN").isTrue();
        }

        @Test
        void of_eighty_five_that_the_cell_really_has_is_believed() {
            PassageBench bench = PassageBench.switched().draining();
            bench.watchWhile(minutes(5), at -> bench.celsius(22 + 62.9 * at / 300));
            bench.celsiusExactly(85.0).watch(seconds(5));

            assertThat(bench.standing()).contains(FindingKind.HOT).doesNotContain(FindingKind.SENSOR_FAULT);
        }

        @Test
        void missed_once_or_twice_is_no_fault() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .celsiusExactly(85.0)
                    .watch(seconds(2))
                    .celsius(22)
                    .watch(minutes(5));

            assertThat(bench.raised()).isEmpty();
        }

        @ParameterizedTest
        @EnumSource(
                value = Suspicion.class,
                names = {"CELSIUS_AT_RAIL", "SENSOR_OPEN"})
        void the_board_itself_does_not_believe_is_a_fault(Suspicion suspicion) {
            PassageBench bench =
                    PassageBench.switched().draining().suspicion(suspicion).watch(seconds(5));

            assertThat(bench.standing()).containsExactly(FindingKind.SENSOR_FAULT);
        }

        @Test
        void is_trusted_again_a_minute_after_it_is_good() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .celsius(Double.NaN)
                    .watch(seconds(10))
                    .celsius(22)
                    .watch(seconds(50));
            assertThat(bench.standing()).containsExactly(FindingKind.SENSOR_FAULT);

            bench.watch(seconds(20));
            assertThat(bench.standing()).isEmpty();
        }

        @Test
        void that_runs_to_ambient_faster_than_a_cell_cools_has_left_its_cell() {
            PassageBench bench = PassageBench.switched().draining();
            bench.watchWhile(minutes(20), at -> bench.celsius(22 + 8 * at / 1200));
            bench.watchWhile(seconds(60), at -> bench.celsius(21.1 + 8.9 * Math.exp(-at / 14)));

            assertThat(bench.standing()).containsExactly(FindingKind.SENSOR_FAULT);
            assertThat(bench.judge().findings().iterator().next().line())
                    .contains("faster than the cell can cool (time constant 1")
                    .contains("a cell has 360 s or more");
            bench.celsius(21.1).watch(hours(1));
            assertThat(bench.standing()).as("it stays away").containsExactly(FindingKind.SENSOR_FAULT);
        }

        @Test
        void that_cools_as_a_cell_does_is_believed() {
            PassageBench bench = PassageBench.switched().draining();
            bench.watchWhile(minutes(20), at -> bench.celsius(22 + 12 * at / 1200));
            bench.watchWhile(minutes(20), at -> bench.celsius(22 + 12 * Math.exp(-at / 390)));

            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void is_believed_when_the_sun_falls_on_the_ambient_sensor() {
            PassageBench bench = PassageBench.switched().draining().warmTo(30, minutes(30));
            bench.watchWhile(seconds(30), at -> bench.ambient(21 + 8 * at / 30)).watch(minutes(5));

            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void that_left_its_cell_is_trusted_again_after_a_person_has_seen_to_it() {
            PassageBench bench = PassageBench.switched().draining();
            bench.watchWhile(minutes(20), at -> bench.celsius(22 + 8 * at / 1200));
            bench.watchWhile(seconds(60), at -> bench.celsius(21.1 + 8.9 * Math.exp(-at / 14)));
            assertThat(bench.standing()).containsExactly(FindingKind.SENSOR_FAULT);

            bench.announce(minutes(1)).celsius(29).watch(minutes(3));

            assertThat(bench.standing()).isEmpty();
        }

        @Test
        void frozen_while_it_used_to_flicker_and_the_room_moves_is_a_fault() {
            PassageBench bench = PassageBench.switched().draining().watch(minutes(20));

            bench.celsiusExactly(22.01).watch(minutes(11));

            assertThat(bench.standing()).containsExactly(FindingKind.SENSOR_FAULT);
        }

        @Test
        void frozen_stays_at_fault_whatever_is_done_on_the_channel_until_it_flickers_again() {
            PassageBench bench = frozen();

            bench.announce(minutes(30)).watch(hours(4));
            assertThat(bench.standing()).as("announced work").containsExactly(FindingKind.SENSOR_FAULT);

            bench.celsius(22).watch(minutes(3));
            assertThat(bench.standing()).as("it flickers").isEmpty();
        }

        @Test
        void frozen_is_not_good_for_a_single_change() {
            PassageBench bench = frozen().announce(minutes(1));

            bench.celsiusExactly(22.03).watch(minutes(30));

            assertThat(bench.standing()).containsExactly(FindingKind.SENSOR_FAULT);
        }

        @Test
        void frozen_just_before_work_on_the_channel_is_found_all_the_same() {
            PassageBench bench = PassageBench.switched().draining().watch(minutes(20));

            bench.celsiusExactly(22.01).watch(minutes(5)).announce(minutes(5)).watch(minutes(10));

            assertThat(bench.standing()).containsExactly(FindingKind.SENSOR_FAULT);
        }

        @Test
        void that_thawed_and_freezes_again_is_found_again() {
            PassageBench bench = frozen().celsius(22).watch(minutes(3));
            assertThat(bench.standing()).isEmpty();

            bench.celsiusExactly(22.01).watch(minutes(11));

            assertThat(bench.standing()).containsExactly(FindingKind.SENSOR_FAULT);
        }

        @Test
        void of_a_coarser_sensor_put_in_the_place_of_a_frozen_one_is_believed_after_three_changes() {
            PassageBench bench = frozen().announce(minutes(5));
            for (int step = 0; step < 3; step++) {
                bench.celsiusExactly(22 + (step % 2) * 0.5).watch(hours(1));
            }

            assertThat(bench.standing()).isEmpty();
            assertThat(bench.watch(hours(5)).standing()).isEmpty();
        }

        @Test
        void frozen_is_never_taken_for_a_cell_that_warms_as_the_room_cools() {
            PassageBench bench = frozen().announce(minutes(30)).watch(minutes(40));

            bench.ambient(4).watch(hours(2));

            assertThat(bench.raised()).doesNotContain(FindingKind.WARMING);
        }

        private PassageBench frozen() {
            PassageBench bench = PassageBench.switched().draining().watch(minutes(20));
            bench.celsiusExactly(22.01).watch(minutes(11));
            assertThat(bench.standing()).containsExactly(FindingKind.SENSOR_FAULT);
            return bench;
        }

        @Test
        void that_changes_in_coarse_steps_may_stand_still_all_night() {
            PassageBench bench = PassageBench.switched().draining();
            for (int step = 0; step < 250; step++) {
                bench.celsiusExactly(22 + (step % 2) * 0.5).watch(minutes(2));
            }
            bench.celsiusExactly(22).watch(hours(8));

            assertThat(bench.raised()).doesNotContain(FindingKind.SENSOR_FAULT);
        }
    }

    @Nested
    class An_ambient_sensor {

        @Test
        void that_fails_blinds_the_judge() {
            PassageBench bench =
                    PassageBench.switched().draining().ambient(Double.NaN).watch(seconds(5));

            assertThat(bench.standing()).containsExactly(FindingKind.SENSOR_FAULT);
        }

        @Test
        void that_fails_leaves_the_absolute_trips_armed() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .ambient(Double.NaN)
                    .watch(seconds(5))
                    .celsius(61)
                    .watch(seconds(2));

            assertThat(bench.standing()).contains(FindingKind.HOT, FindingKind.SENSOR_FAULT);
        }
    }

    @Nested
    class A_voltage {

        @ParameterizedTest
        @ValueSource(doubles = {Double.NaN, 3.4e38, -3.4e38, 7.2, Double.NEGATIVE_INFINITY})
        void that_cannot_be_is_a_fault_and_reaches_no_average(double volts) {
            PassageBench bench = PassageBench.switched().draining();
            double before = bench.judge().ampereHours();
            bench.reads(volts).watch(minutes(10));
            double after = bench.judge().ampereHours();

            assertThat(bench.standing()).containsExactly(FindingKind.SENSOR_FAULT);
            assertThat(after).as("what was not seen is not claimed").isEqualTo(before);
            bench.readsTheCellAgain().watch(minutes(10));
            assertThat(bench.judge().ampereHours() - after).isBetween(0.058, 0.061);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        }

        @Test
        void at_the_upper_end_of_the_converter_is_a_fault() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .suspicion(Suspicion.VOLTS_AT_RAIL)
                    .watch(seconds(5));

            assertThat(bench.standing()).containsExactly(FindingKind.SENSOR_FAULT);
        }

        @Test
        void near_zero_is_never_a_fault_of_the_sensor() {
            PassageBench bench = PassageBench.switched()
                    .unipolar()
                    .draining()
                    .emptied()
                    .watch(minutes(10))
                    .suspicion(Suspicion.VOLTS_AT_RAIL)
                    .cell(0.3, 0)
                    .watch(hours(1));

            assertThat(bench.raised()).isEmpty();
        }
    }

    @Nested
    class A_current {

        @Test
        void absurd_but_finite_is_a_fault_and_reaches_no_charge() {
            PassageBench bench = PassageBench.switched().readsCurrent().draining();
            double before = bench.judge().ampereHours();

            bench.readsAmperes(3.4e38)
                    .watch(seconds(10))
                    .readsAmperes(Double.NaN)
                    .watch(minutes(10));

            assertThat(bench.raised()).containsExactly(FindingKind.SENSOR_FAULT);
            assertThat(bench.judge().ampereHours() - before).isBetween(0.059, 0.063);
        }

        @Test
        void that_is_not_read_is_no_fault() {
            PassageBench bench = PassageBench.switched().draining().watch(minutes(10));

            assertThat(bench.raised()).isEmpty();
        }
    }

    @Test
    void a_fault_gives_no_watch_time_in_REST() {
        PassageBench bench = PassageBench.switched()
                .resting()
                .watch(hours(12))
                .celsius(Double.NaN)
                .watch(hours(13));
        assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);

        bench.celsius(22).watch(hours(12)).watch(minutes(2));
        assertThat(bench.judge().allowed()).contains(Act.TIE_OFF);
    }
}
