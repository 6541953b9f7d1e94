package org.ebbwatch.judge.estimate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class StepResistanceTest {

    @Test
    void is_the_sag_over_the_current_through_a_known_load() {
        StepResistance meter = rested();
        meter.loaded(1_000, 4.0, 0.4, 0.001);

        StepResistance.Step step = meter.latest().orElseThrow();
        assertThat(step.ohms()).isCloseTo(0.2 / 0.4, within(1e-12));
        assertThat(step.expandedOhms()).isCloseTo(0.5 * Math.hypot(0.005, 0.01), within(1e-12));
        assertThat(step.millis()).isEqualTo(1_000);
    }

    @Test
    void is_taken_by_the_measured_current_where_there_is_one() {
        StepResistance meter = rested();
        meter.loaded(1_000, 4.0, 2.0, 0.001);

        assertThat(meter.latest().orElseThrow().ohms()).isCloseTo(0.1, within(1e-12));
    }

    @Test
    void waits_for_the_first_reading_half_a_second_after_the_last_open_one() {
        StepResistance meter = rested();
        meter.loaded(100, 4.1, 0.41, 0.001);
        assertThat(meter.latest()).isEmpty();
        meter.loaded(600, 4.0, 0.4, 0.001);
        meter.loaded(60_000, 3.0, 0.3, 0.001);

        assertThat(meter.latest().orElseThrow().ohms()).isCloseTo(0.5, within(1e-12));
    }

    @Test
    void is_not_given_where_no_step_stands_out_or_the_open_reading_is_old() {
        StepResistance faint = rested();
        faint.loaded(1_000, 4.1995, 0.41995, 0.001);
        assertThat(faint.latest()).isEmpty();

        StepResistance late = rested();
        late.loaded(13_000, 4.0, 0.4, 0.001);
        assertThat(late.latest()).isEmpty();

        StepResistance blind = rested();
        blind.interrupt();
        blind.loaded(1_000, 4.0, 0.4, 0.001);
        assertThat(blind.latest()).isEmpty();
    }

    /** Half-width 1 % on the load, 0.5 mV of noise: U holds at least 93 of 100. */
    @Test
    void lies_within_its_uncertainty_for_loads_and_noise_drawn_at_random() {
        var random = new Random(1);
        int inside = 0;
        for (int run = 0; run < 2_000; run++) {
            double trueOhms = 10 * (1 + 0.01 * (2 * random.nextDouble() - 1));
            double loaded = 4.2 / (1 + 0.12 / trueOhms);
            var meter = new StepResistance(() -> 2 * 0.01 / Math.sqrt(3));
            for (int second = -20; second <= 0; second++) {
                meter.open(second * 1_000L, 4.2 + 0.0005 * random.nextGaussian(), Double.NaN);
            }
            double read = loaded + 0.0005 * random.nextGaussian();
            meter.loaded(1_000, read, read / 10, 2 * Math.sqrt(2) * 0.0005);
            StepResistance.Step step = meter.latest().orElseThrow();
            inside += Math.abs(step.ohms() - 0.12) <= step.expandedOhms() ? 1 : 0;
        }
        assertThat(inside / 2_000.0).isBetween(0.93, 1.0);
    }

    private static StepResistance rested() {
        var meter = new StepResistance(() -> 0.01);
        for (int second = -5; second <= 0; second++) {
            meter.open(second * 1_000L, 4.2, Double.NaN);
        }
        return meter;
    }
}
