package org.ebbwatch.judge.estimate;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

class TimeToLimitTest {

    @Test
    void by_slope_is_the_distance_over_the_fall_with_both_ends_of_its_interval() {
        var slope = new RobustSlope(-0.001, -0.002, -0.0005);

        assertThat(TimeToLimit.bySlope(1.1, 0.1, slope)).isEqualTo(new TimeToLimit(500_000, 1_000_000, 2_000_000));
    }

    @Test
    void of_a_voltage_that_may_as_well_stand_has_no_end() {
        var slope = new RobustSlope(-0.001, -0.002, 0.0005);

        assertThat(TimeToLimit.bySlope(1.1, 0.1, slope).mostMillis()).isEqualTo(TimeToLimit.NEVER);
    }

    @Test
    void is_over_once_the_limit_is_passed() {
        assertThat(TimeToLimit.bySlope(0.05, 0.1, new RobustSlope(1, 1, 1))).isEqualTo(new TimeToLimit(0, 0, 0));
    }

    @Test
    void by_charge_is_what_is_left_over_the_current() {
        assertThat(TimeToLimit.byCharge(1.0, 0.1, 3.0, 0.5, 0.8, 0.5))
                .isEqualTo(new TimeToLimit(2_880_000, 10_080_000, 15_120_000));
        assertThat(TimeToLimit.byCharge(3.5, 0.1, 3.0, 0.5, 0.8, 0.5)).isEqualTo(new TimeToLimit(0, 0, 0));
    }

    /** A voltage that falls straight, 1 mV of noise: reached within the interval in 93 of 100. */
    @Test
    void holds_the_moment_a_straight_fall_reaches_the_limit() {
        var random = new Random(1);
        int held = 0;
        for (int run = 0; run < 500; run++) {
            var trail = new Trail(64, 2_000);
            for (int second = 0; second <= 120; second++) {
                trail.add(second * 1_000L, 2.0 - 0.0004 * second + 0.001 * random.nextGaussian());
            }
            RobustSlope slope = RobustSlope.of(trail, 120_000).orElseThrow();
            TimeToLimit to = TimeToLimit.bySlope(2.0 - 0.0004 * 120, 0.1, slope);
            long truth = Math.round((1.9 / 0.0004 - 120) * 1000);
            held += to.leastMillis() <= truth && truth <= to.mostMillis() ? 1 : 0;
        }
        assertThat(held).isGreaterThanOrEqualTo(465);
    }
}
