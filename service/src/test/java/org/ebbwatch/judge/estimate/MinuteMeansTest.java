package org.ebbwatch.judge.estimate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class MinuteMeansTest {

    @Test
    void are_of_whole_minutes_only() {
        MinuteMeans means = new MinuteMeans(3);
        feed(means, 59, 1);
        assertThat(means.mean(3)).isNaN();

        feed(means, 1, 1);
        feed(means, 30, 100);

        assertThat(means.size()).isEqualTo(1);
        assertThat(means.mean(3)).isEqualTo(1);
    }

    @Test
    void keep_as_many_minutes_as_asked_for_and_give_the_mean_of_the_last() {
        MinuteMeans means = new MinuteMeans(3);
        for (int minute = 1; minute <= 5; minute++) {
            feed(means, 60, minute);
        }

        assertThat(means.size()).isEqualTo(3);
        assertThat(means.mean(10)).isEqualTo(4);
        assertThat(means.mean(2)).isEqualTo(4.5);
        assertThat(means.spread(1)).isEqualTo(2);
    }

    @Test
    void leave_out_what_was_not_read_and_time_nobody_watched() {
        MinuteMeans means = new MinuteMeans(3);
        means.add(Double.NaN, 60_000);
        means.add(1, 0);
        assertThat(means.size()).isZero();

        means.add(3, 60_000);

        assertThat(means.mean(3)).isEqualTo(2);
    }

    @Test
    void have_a_standard_error_a_tenth_of_a_reading_s_after_a_hundred_readings() {
        Random random = new Random(7);
        double squares = 0;
        double errors = 0;
        for (int trial = 0; trial < 400; trial++) {
            MinuteMeans means = new MinuteMeans(10);
            for (int reading = 0; reading < 100; reading++) {
                means.add(random.nextGaussian(), 6_000);
            }
            squares += means.mean(10) * means.mean(10);
            errors += means.standardError(10) * means.standardError(10);
        }

        assertThat(Math.sqrt(errors / 400)).isCloseTo(0.1, within(0.01));
        assertThat(Math.sqrt(squares / 400)).isCloseTo(0.1, within(0.015));
    }

    @Test
    void have_a_standard_error_that_knows_of_noise_slower_than_a_reading() {
        Random random = new Random(7);
        MinuteMeans means = new MinuteMeans(10);
        for (int minute = 0; minute < 10; minute++) {
            feed(means, 60, random.nextGaussian());
        }

        assertThat(means.standardError(10)).isBetween(0.15, 0.6);
    }

    private static void feed(MinuteMeans means, int seconds, double reading) {
        for (int second = 0; second < seconds; second++) {
            means.add(reading, 1_000);
        }
    }
}
