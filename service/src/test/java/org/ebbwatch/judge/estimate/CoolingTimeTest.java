package org.ebbwatch.judge.estimate;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CoolingTimeTest {

    /** 12 s and 15 s: a thermistor in air (its data sheet); 390 s a thin pouch (computed); 778 s and 1200 s 18650 cells. */
    @ParameterizedTest
    @ValueSource(doubles = {12, 15, 60, 390, 778, 1200})
    void lies_within_its_interval_as_often_as_it_says(double tau) {
        var random = new Random(2);
        int inside = 0;
        for (int run = 0; run < 500; run++) {
            CoolingTime found = after(60, second -> 12 * Math.exp(-second / tau) + 0.05 * random.nextGaussian())
                    .orElseThrow();
            inside += found.leastSeconds() <= tau && tau <= found.mostSeconds() ? 1 : 0;
        }
        assertThat(inside / 500.0).isBetween(0.92, 0.99);
    }

    @Test
    void of_a_sensor_in_air_is_surely_not_that_of_a_cell() {
        assertThat(after(60, second -> 12 * Math.exp(-second / 15.0))
                        .orElseThrow()
                        .mostSeconds())
                .isLessThan(120);
    }

    @Test
    void is_not_given_for_a_temperature_that_rises_or_is_lost_in_its_noise() {
        var random = new Random(2);
        assertThat(after(60, second -> 5 + 0.01 * second)).isEmpty();
        assertThat(after(60, second -> 0.05 * random.nextGaussian())).isEmpty();
    }

    private static Optional<CoolingTime> after(int seconds, IntToDoubleFunction excess) {
        var trail = new Trail(32, 2_000);
        for (int second = 0; second <= seconds; second++) {
            trail.add(second * 1_000L, excess.applyAsDouble(second));
        }
        return CoolingTime.of(trail, 60_000, 0.05);
    }
}
