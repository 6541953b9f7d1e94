package org.ebbwatch.judge.estimate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class RobustSlopeTest {
    private static final long SPAN = 120_000;

    @Test
    void of_a_straight_line_is_its_slope_and_sure() {
        RobustSlope slope = slope(second -> 20 + 0.05 * second);

        assertThat(slope.perSecond()).isCloseTo(0.05, within(1e-6));
        assertThat(slope.highestPerSecond() - slope.lowestPerSecond()).isLessThan(1e-5);
    }

    @Property(tries = 100)
    void is_not_moved_far_by_a_fifth_of_wild_readings(
            @ForAll long seed, @ForAll @DoubleRange(min = -0.05, max = 0.05) double perSecond) {
        var random = new Random(seed);
        RobustSlope slope =
                slope(second -> second % 20 == 0 ? 150 * random.nextDouble() : 20 + perSecond * second + noise(random));

        assertThat(slope.perSecond()).isCloseTo(perSecond, within(0.01));
    }

    @Property(tries = 60)
    void is_found_the_same_when_everything_is_shifted(@ForAll @IntRange(min = 0, max = 100) int shift) {
        var random = new Random(5);
        double[] readings = random.doubles(121).toArray();
        assertThat(slope(second -> readings[second] + shift).perSecond())
                .isCloseTo(slope(second -> readings[second]).perSecond(), within(1e-5));
    }

    /** The interval is Sen's: by simulation it holds the slope in 93 to 97 of 100 runs. */
    @Test
    void lies_within_its_interval_as_often_as_it_says() {
        var random = new Random(3);
        int runs = 4_000;
        int inside = 0;
        for (int run = 0; run < runs; run++) {
            RobustSlope slope = slope(second -> 20 + 0.003 * second + noise(random));
            inside += slope.lowestPerSecond() <= 0.003 && 0.003 <= slope.highestPerSecond() ? 1 : 0;
        }
        assertThat(inside / (double) runs).isBetween(0.93, 0.97);
    }

    @Test
    void is_the_median_of_all_the_slopes_between_pairs() {
        double[] readings = {3, 1, 4, 1, 5, 9, 2, 6, 5};
        var trail = new Trail(16, 1_000);
        double[] slopes = new double[36];
        int filled = 0;
        for (int late = 0; late < readings.length; late++) {
            trail.add(late * 2_000L, readings[late]);
            for (int early = 0; early < late; early++) {
                slopes[filled++] = (readings[late] - readings[early]) / (2 * (late - early));
            }
        }
        Arrays.sort(slopes);
        assertThat(RobustSlope.of(trail, SPAN).orElseThrow().perSecond())
                .isCloseTo((slopes[17] + slopes[18]) / 2, within(1e-6));
    }

    @Test
    void is_not_given_from_fewer_than_eight_readings() {
        var trail = new Trail(16, 1_000);
        for (int second = 0; second < 7; second++) {
            trail.add(second * 1_000L, second);
        }
        assertThat(RobustSlope.of(trail, SPAN)).isEmpty();
        trail.add(500_000, 1);
        assertThat(RobustSlope.of(trail, SPAN)).isEmpty();
    }

    private static double noise(Random random) {
        return 0.1 * random.nextGaussian();
    }

    private static RobustSlope slope(IntToDoubleFunction celsius) {
        var trail = new Trail(64, 2_000);
        for (int second = 0; second <= 120; second++) {
            trail.add(second * 1_000L, celsius.applyAsDouble(second));
        }
        return RobustSlope.of(trail, SPAN).orElseThrow();
    }
}
