package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;
import static org.ebbwatch.judge.PassageBench.seconds;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** WARMING by evidence: a rise that noise does not explain, where nothing should heat. */
class HeatEvidenceTest {

    @Test
    void is_not_raised_for_a_cold_cell_that_a_warmer_room_warms() {
        PassageBench bench = PassageBench.switched().resting().watch(hours(2));
        double from = bench.celsius();
        bench.ambient(30).watch(minutes(5));

        bench.watchWhile(minutes(60), at -> bench.celsius(30 - (30 - from) * Math.exp(-at / 778)));

        assertThat(bench.raised()).isEmpty();
    }

    @Test
    void is_raised_for_a_cold_cell_that_warms_faster_than_the_room_explains() {
        PassageBench bench = PassageBench.switched().resting().watch(hours(2));
        double from = bench.celsius();
        bench.ambient(24).watch(minutes(20));

        bench.watchWhile(minutes(3), at -> bench.celsius(from + at / 60));

        assertThat(bench.standing()).containsExactly(FindingKind.WARMING);
    }

    @Test
    void is_not_raised_while_the_room_falls_past_a_cell_that_still_warms() {
        PassageBench bench = PassageBench.switched().resting().watch(hours(2));
        bench.watchWhile(minutes(20), at -> bench.ambient(23 - 0.12 * at / 60).celsius(22 + 0.06 * at / 60));

        assertThat(bench.raised()).isEmpty();
    }

    /** The asked bound is 1.3 times the ideal observer's delay; on the load it holds once its own warmth has settled. */
    @Test
    void is_raised_on_the_load_too_once_the_cells_own_warmth_has_settled() {
        PassageBench bench = onLoad(3.8).watch(minutes(80));
        bench.watchWhile(minutes(2), at -> bench.celsius(22 + 0.2 * at / 60));

        assertThat(bench.standing()).containsExactly(FindingKind.WARMING);
    }

    private static PassageBench onLoad(double volts) {
        return PassageBench.switched().cell(volts + 0.1, volts).checkedIn().act(Act.PUT_ON);
    }

    @Test
    void is_not_raised_on_the_load_before_that_nor_near_the_end_where_its_resistance_grows() {
        for (PassageBench bench :
                List.of(onLoad(3.8).watch(minutes(30)), onLoad(3.2).watch(minutes(80)))) {
            bench.watchWhile(minutes(4), at -> bench.celsius(22 + 0.2 * at / 60));

            assertThat(bench.raised()).isEmpty();
        }
    }

    @Test
    void is_raised_where_nothing_should_heat_within_two_minutes_of_a_tenth_of_a_kelvin_a_minute() {
        for (PassageBench bench : List.of(
                PassageBench.switched().resting().watch(hours(2)),
                PassageBench.switched().tiedOff().watch(hours(1)),
                PassageBench.switched().reference(21).tiedOff().watch(hours(1)))) {
            bench.watchWhile(seconds(120), at -> bench.celsius(22 + 0.12 * at / 60));

            assertThat(bench.standing()).containsExactly(FindingKind.WARMING);
            assertThat(bench.judge().findings().iterator().next().line())
                    .contains("with nothing to warm it")
                    .contains("noise explains 0.0");
        }
    }

    @Test
    void is_not_raised_for_a_cell_that_settles_after_hands_carried_it_to_another_place() {
        for (PassageBench bench : List.of(
                PassageBench.switched().tiedOff().watch(minutes(10)),
                PassageBench.switched().parted().watch(minutes(10)))) {
            bench.watchWhile(minutes(5), at -> bench.celsius(22 + 0.2 * at / 60));

            assertThat(bench.raised()).isEmpty();
        }
    }

    /** 0.1 K of noise on the cell and on the room, 0.2 K/min: 1.3 times the 41.6 s an ideal observer needs. */
    @Test
    void is_raised_in_rest_within_54_seconds_in_the_median_through_a_tenth_of_a_kelvin_of_noise() {
        var random = new Random(3);
        double[] delays = new double[25];
        for (int run = 0; run < delays.length; run++) {
            PassageBench bench = PassageBench.switched().resting();
            int second = 0;
            for (; second < 3_600 || bench.standing().isEmpty(); second++) {
                double ramp = Math.max(0, second - 3_600) * 0.2 / 60;
                bench.ambient(21 + 0.1 * random.nextGaussian())
                        .celsiusExactly(21.5 + ramp + 0.1 * random.nextGaussian())
                        .watch(seconds(1));
            }
            delays[run] = second - 3_600;
        }
        Arrays.sort(delays);
        assertThat(delays[0]).isPositive();
        assertThat(delays[delays.length / 2]).isBetween(40.0, 54.0);
    }

    @Test
    void stands_as_long_as_the_rise_goes_on_and_clears_when_it_has_ended() {
        PassageBench bench = PassageBench.switched().resting().watch(hours(2));
        bench.watchWhile(minutes(15), at -> bench.celsius(22 + 0.2 * at / 60));
        assertThat(bench.raised()).containsExactly(FindingKind.WARMING);
        assertThat(bench.standing()).containsExactly(FindingKind.WARMING);

        bench.warmTo(22, minutes(60)).watch(minutes(30));
        assertThat(bench.standing()).isEmpty();
        assertThat(bench.raised()).containsExactly(FindingKind.WARMING);
    }

    @Test
    void is_not_raised_for_a_rise_of_half_that() {
        PassageBench bench = PassageBench.switched().resting().watch(hours(2));
        bench.watchWhile(minutes(30), at -> bench.celsius(22 + 0.05 * at / 60));

        assertThat(bench.raised()).isEmpty();
    }
}
