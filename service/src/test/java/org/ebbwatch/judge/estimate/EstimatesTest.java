package org.ebbwatch.judge.estimate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class EstimatesTest {

    @Nested
    class Noise {

        @Test
        void of_white_noise_is_its_deviation() {
            var noise = new NoiseMeter();
            var random = new Random(7);
            for (int reading = 0; reading < 5_000; reading++) {
                noise.add(3.0 + 0.002 * random.nextGaussian(), 1e-4);
            }
            assertThat(noise.deviation(1e-4)).isBetween(0.0015, 0.0026);
        }

        @Test
        void is_never_less_than_that_of_a_count() {
            var noise = new NoiseMeter();
            for (int reading = 0; reading < 100; reading++) {
                noise.add(3.0, 0.002);
            }
            assertThat(noise.deviation(0.002)).isCloseTo(0.002 / Math.sqrt(12), within(1e-9));
            assertThat(noise.expandedDifference(0.002))
                    .isCloseTo(2 * Math.sqrt(2) * 0.002 / Math.sqrt(12), within(1e-9));
        }

        @Test
        void of_a_noisy_channel_is_known_within_its_first_readings() {
            var noise = new NoiseMeter();
            var random = new Random(11);
            for (int reading = 0; reading < 25; reading++) {
                noise.add(3.0 + 0.005 * random.nextGaussian(), 1e-4);
            }
            assertThat(noise.deviation(1e-4)).isBetween(0.003, 0.008);
        }

        @Test
        void is_hardly_moved_by_one_step_of_a_load() {
            var noise = new NoiseMeter();
            for (int reading = 0; reading < 1_000; reading++) {
                noise.add(reading < 500 ? 3.7 : 3.5, 1e-4);
            }
            assertThat(noise.deviation(1e-4)).isLessThan(1e-4);
        }
    }

    @Nested
    class Slope {

        @Test
        void of_a_straight_line_is_its_slope_within_the_span_only() {
            var trail = new Trail(64, 2_000);
            for (int second = 0; second < 300; second++) {
                trail.add(second * 1_000L, second < 200 ? 20 : 20 + 0.05 * (second - 200));
            }
            assertThat(trail.slopePerSecond(60_000, 20)).isCloseTo(0.05, within(1e-6));
            assertThat(trail.size()).isEqualTo(64);
        }

        @Test
        void is_not_given_from_too_few_readings() {
            var trail = new Trail(64, 2_000);
            for (int second = 0; second < 20; second++) {
                trail.add(second * 1_000L, 20 + second);
            }
            assertThat(trail.slopePerSecond(120_000, 20)).isNaN();
        }

        @Test
        void keeps_no_reading_that_is_none() {
            var trail = new Trail(4, 1);
            trail.add(1, 5);
            trail.add(2, Double.NaN);
            trail.add(3, 6);
            assertThat(trail.size()).isEqualTo(2);
            assertThat(trail.reading(1)).isEqualTo(6);
            assertThat(trail.millis(2)).isEqualTo(1);
        }
    }

    @Nested
    class Watch {

        @Test
        void counts_what_was_watched_and_how_much_of_it_was_unbroken() {
            var clock = new WatchClock();
            clock.run(10);
            clock.pause();
            clock.run(5);
            assertThat(clock.elapsedMillis()).isEqualTo(15);
            assertThat(clock.unbrokenMillis()).isEqualTo(5);

            clock.next();
            clock.run(1);
            assertThat(clock.elapsedMillis()).isEqualTo(1);
            assertThat(clock.unbrokenMillis()).isEqualTo(6);

            clock.restart();
            assertThat(clock.elapsedMillis()).isZero();
            assertThat(clock.unbrokenMillis()).isZero();
        }
    }
}
