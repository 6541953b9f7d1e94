package org.ebbwatch.judge.estimate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CoolingTimeTest {

    @Test
    void is_the_time_over_the_logarithm_of_what_is_left() {
        assertThat(CoolingTime.between(10, 10 / Math.E, 14, 1e-6).seconds()).isCloseTo(14, within(1e-9));
    }

    /** 12 s and 15 s: a thermistor in air (its data sheet); 390 s a thin pouch (computed); 778 s and 1200 s 18650 cells. */
    @ParameterizedTest
    @ValueSource(doubles = {12, 15, 60, 390, 778, 1200})
    void lies_within_its_interval_as_often_as_it_says(double tau) {
        var random = new Random(2);
        int inside = 0;
        for (int run = 0; run < 2_000; run++) {
            double before = 12 + 0.1 * random.nextGaussian();
            double now = 12 * Math.exp(-10 / tau) + 0.1 * random.nextGaussian();
            CoolingTime found = CoolingTime.between(before, now, 10, 0.1);
            inside += found.leastSeconds() <= tau && tau <= found.mostSeconds() ? 1 : 0;
        }
        assertThat(inside / 2_000.0).isBetween(0.93, 0.97);
    }

    @Test
    void of_a_sensor_in_air_is_surely_not_that_of_a_cell() {
        assertThat(CoolingTime.between(9, 9 * Math.exp(-6 / 15.0), 6, 0.1).mostSeconds())
                .isLessThan(20);
    }

    @Test
    void of_what_does_not_fall_or_is_gone_into_the_noise_has_no_end_or_a_floor() {
        assertThat(CoolingTime.between(5, 5.5, 10, 0.1).seconds()).isInfinite();
        assertThat(CoolingTime.between(5, -1, 10, 0.1).seconds()).isCloseTo(10 / Math.log(50), within(1e-9));
    }
}
