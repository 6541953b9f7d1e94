package org.ebbwatch.judge.estimate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HeatingTestTest {
    private static final double NOISE = 0.1;
    private static final double SLOPE = 0.2 / 60;
    private static final int NIGHT_SECONDS = 43_200;
    private static final long HALF_HOUR_MILLIS = 1_800_000;

    /** 0.2 K/min in 0.1 K of noise, one reading a second, one false alarm in 1,000 nights of 12 h. */
    @Test
    void a_cell_that_starts_to_heat_is_flagged_within_1_3_times_the_delay_of_an_ideal_observer() {
        var random = new Random(1);
        var ideal = new IdealObserver(SLOPE, NOISE);
        double bound = ideal.boundFor(1_000.0 * NIGHT_SECONDS, random, 1_000_000);
        double idealDelay = ideal.medianDelay(bound, random, 1_000);
        double delay = medianDelay(SLOPE, 3_600, 1_000);

        assertThat(idealDelay).isBetween(39.0, 44.0);
        assertThat(delay).isLessThan(1.3 * idealDelay).isBetween(42.0, 52.0);
    }

    /** Means of four readings are what it sees; they are drawn as such. */
    @Test
    void noise_alone_raises_no_false_alarm_in_a_thousand_nights() {
        var random = new Random(5);
        int alarms = 0;
        for (int night = 0; night < 1_000; night++) {
            var test = new HeatingTest();
            for (long second = 0; second < NIGHT_SECONDS; second += 4) {
                test.add(second * 1_000, 25 + NOISE / 2 * random.nextGaussian(), 0.01);
                alarms += test.isHeating() ? 1 : 0;
            }
        }
        assertThat(alarms).isZero();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 1, 5})
    void the_faster_it_heats_the_sooner_it_is_flagged(double kelvinPerMinute) {
        assertThat(medianDelay(kelvinPerMinute / 60, 3_600, 100))
                .isLessThan(medianDelay(kelvinPerMinute / 120, 3_600, 100));
    }

    @Test
    void it_tells_how_fast_and_for_how_long_it_has_been_heating() {
        var random = new Random(9);
        var test = new HeatingTest();
        for (int second = 0; second < 3_720; second++) {
            double ramp = Math.max(0, second - 3_600) * SLOPE;
            test.add(second * 1_000L, 25 + ramp + NOISE * random.nextGaussian(), 0.01);
        }
        assertThat(test.isHeating()).isTrue();
        assertThat(test.perSecond()).isCloseTo(SLOPE, within(SLOPE / 4));
        assertThat(test.rampSeconds()).isBetween(90.0, 150.0);
    }

    @ParameterizedTest
    @ValueSource(longs = {100, 1_000, 5_000, 10_000, 30_000})
    void how_fast_does_not_depend_on_how_often_it_is_read(long intervalMillis) {
        var random = new Random(17);
        var test = new HeatingTest();
        long onset = 200 * Math.max(4_000, intervalMillis);
        for (long at = 0; at < onset + 2 * HALF_HOUR_MILLIS && !test.isHeating(); at += intervalMillis) {
            double ramp = Math.max(0, at - onset) / 1000.0 * SLOPE;
            test.add(at, 25 + ramp + NOISE * random.nextGaussian(), 0.01);
        }
        assertThat(test.isHeating()).isTrue();
        assertThat(test.perSecond()).isCloseTo(SLOPE, within(SLOPE / 2));
    }

    @Test
    void a_cell_that_cools_or_steps_down_is_not_heating() {
        var random = new Random(2);
        var test = new HeatingTest();
        for (int second = 0; second < 7_200; second++) {
            double celsius = 40 - 10 * (1 - Math.exp(-second / 1_100.0)) - (second > 5_000 ? 3 : 0);
            test.add(second * 1_000L, celsius + NOISE * random.nextGaussian(), 0.01);
            assertThat(test.isHeating()).isFalse();
        }
    }

    @Test
    void coarse_counts_that_hardly_change_are_no_evidence() {
        var test = new HeatingTest();
        for (int second = 0; second < 7_200; second++) {
            test.add(second * 1_000L, second % 997 == 0 ? 25.5 : 25, 0.5);
            assertThat(test.isHeating()).isFalse();
        }
    }

    @Test
    void it_says_nothing_while_it_learns_and_after_it_was_told_to_forget() {
        var test = new HeatingTest();
        for (int second = 0; second < 480; second++) {
            test.add(second * 1_000L, 25 + second * 0.1, 0.01);
        }
        assertThat(test.isHeating()).isFalse();
        for (int second = 480; second < 3_600; second++) {
            test.add(second * 1_000L, second < 3_000 ? 25 : 25 + (second - 3_000) * 0.01, 0.01);
        }
        assertThat(test.isHeating()).isTrue();
        test.forget();
        assertThat(test.isHeating()).isFalse();
        assertThat(test.perSecond()).isZero();
    }

    private static double medianDelay(double slope, int steadySeconds, int runs) {
        var random = new Random(7);
        double[] delays = new double[runs];
        for (int run = 0; run < runs; run++) {
            var test = new HeatingTest();
            int begins = steadySeconds + random.nextInt(4);
            int second = 0;
            while (second <= begins || !test.isHeating()) {
                double ramp = slope * Math.max(0, second - begins);
                test.add(second * 1_000L, 25 + ramp + NOISE * random.nextGaussian(), 0.01);
                second++;
            }
            delays[run] = second - 1 - begins;
        }
        Arrays.sort(delays);
        return delays[runs / 2];
    }
}
