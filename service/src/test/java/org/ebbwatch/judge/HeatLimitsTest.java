package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;
import static org.ebbwatch.judge.PassageBench.seconds;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** The limits of the rules against heat, each from both sides. */
class HeatLimitsTest {

    @Nested
    class HOT {

        @Test
        void begins_at_sixty_degrees_sharp() {
            PassageBench bench = roomAt(50).celsiusExactly(59.99).watch(seconds(30));
            assertThat(bench.raised()).doesNotContain(FindingKind.HOT);

            bench.celsiusExactly(60).watch(seconds(1));

            assertThat(bench.standing()).contains(FindingKind.HOT);
        }

        @Test
        void begins_in_tie_off_at_forty_five_degrees_sharp() {
            PassageBench bench =
                    PassageBench.switched().reference(43).ambient(43).tiedOff();
            bench.celsiusExactly(44.99).watch(seconds(30));
            assertThat(bench.raised()).doesNotContain(FindingKind.HOT);

            bench.celsiusExactly(45).watch(seconds(1));

            assertThat(bench.standing()).contains(FindingKind.HOT);
        }

        @Test
        void begins_in_tie_off_five_kelvin_over_the_dummy_sharp() {
            PassageBench bench = PassageBench.switched().reference(21).tiedOff().warmTo(25.5, minutes(20));
            bench.celsiusExactly(25.99).watch(seconds(30));
            assertThat(bench.raised()).doesNotContain(FindingKind.HOT);

            bench.celsiusExactly(26).watch(seconds(1));

            assertThat(bench.standing()).contains(FindingKind.HOT);
        }

        @Test
        void begins_in_tie_off_seven_kelvin_over_the_room_sharp() {
            PassageBench bench = PassageBench.switched().tiedOff().warmTo(27.5, minutes(20));
            bench.celsiusExactly(27.99).watch(seconds(30));
            assertThat(bench.raised()).doesNotContain(FindingKind.HOT);

            bench.celsiusExactly(28).watch(seconds(1));

            assertThat(bench.standing()).contains(FindingKind.HOT);
        }

        @Test
        void begins_at_half_a_kelvin_a_second_over_two_kelvin_and_what_noise_adds() {
            PassageBench bench =
                    PassageBench.switched().draining().celsiusExactly(22).watch(seconds(30));
            rises(bench, 22, 0.5, 3);
            assertThat(bench.raised()).as("1.5 K").doesNotContain(FindingKind.HOT);

            bench.celsiusExactly(24.05).watch(seconds(1));

            assertThat(bench.standing()).contains(FindingKind.HOT);
        }

        @Test
        void does_not_begin_below_half_a_kelvin_a_second() {
            PassageBench bench =
                    PassageBench.switched().draining().celsiusExactly(22).watch(seconds(30));

            rises(bench, 22, 0.48, 10);

            assertThat(bench.raised()).doesNotContain(FindingKind.HOT);
        }

        @Test
        void is_over_only_after_an_hour_below_three_kelvin_over_the_room() {
            PassageBench bench = PassageBench.switched().draining().celsius(61).watch(seconds(10));
            bench.watchWhile(hours(3), at -> bench.celsius(24.05 + 37 * Math.exp(-at / 500)));
            assertThat(bench.judge().allowed()).doesNotContain(Act.DRAIN_AGAIN);

            bench.celsius(23.95).watch(minutes(59));
            assertThat(bench.judge().allowed()).doesNotContain(Act.DRAIN_AGAIN);
            bench.watch(minutes(2));

            assertThat(bench.judge().allowed()).contains(Act.DRAIN_AGAIN);
        }

        @Test
        void begins_with_the_third_scan_of_a_sudden_rise() {
            PassageBench bench =
                    PassageBench.switched().draining().celsiusExactly(22).watch(seconds(30));
            rises(bench, 22, 3, 1);
            assertThat(bench.raised()).as("one step").doesNotContain(FindingKind.HOT);

            rises(bench, 25, 1, 1);

            assertThat(bench.standing()).contains(FindingKind.HOT);
        }

        @Test
        void is_not_over_sooner_for_the_calm_before_a_gap() {
            PassageBench bench = cooled().watch(minutes(50));

            bench.gap(minutes(20)).watch(minutes(55));
            assertThat(bench.judge().allowed()).doesNotContain(Act.DRAIN_AGAIN);
            bench.watch(minutes(10));

            assertThat(bench.judge().allowed()).contains(Act.DRAIN_AGAIN);
        }

        @Test
        void is_not_over_sooner_for_the_calm_before_the_sensor_was_blind() {
            PassageBench bench = cooled().watch(minutes(50));

            bench.celsius(Double.NaN).watch(minutes(2)).celsius(22).watch(minutes(55));
            assertThat(bench.judge().allowed()).doesNotContain(Act.DRAIN_AGAIN);
            bench.watch(minutes(10));

            assertThat(bench.judge().allowed()).contains(Act.DRAIN_AGAIN);
        }

        /** Hot, and for five minutes now within two kelvin of the room. */
        private static PassageBench cooled() {
            PassageBench bench = PassageBench.switched().draining().celsius(61).watch(seconds(10));
            bench.watchWhile(minutes(30), at -> bench.celsius(22 + 39 * Math.exp(-at / 500)));
            return bench;
        }

        private static PassageBench roomAt(double celsius) {
            return PassageBench.switched()
                    .ambient(celsius)
                    .celsius(celsius + 5)
                    .checkedIn()
                    .act(Act.PUT_ON)
                    .watch(minutes(10));
        }

        private static void rises(PassageBench bench, double celsius, double kelvinPerSecond, int seconds) {
            for (int second = 1; second <= seconds; second++) {
                bench.celsiusExactly(celsius + kelvinPerSecond * second).watch(seconds(1));
            }
        }
    }

    @Nested
    class LOAD_HOT {

        @Test
        void begins_at_one_hundred_and_ten_degrees_sharp_and_opens_the_load() {
            PassageBench bench = PassageBench.switched().draining().bank(109.9).watch(minutes(1));
            assertThat(bench.raised()).isEmpty();

            bench.bank(110).watch(seconds(2));

            assertThat(bench.standing()).contains(FindingKind.LOAD_HOT);
            assertThat(bench.isLoaded()).isFalse();
        }
    }
}
