package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.Entry.Suspicion;
import org.ebbwatch.judge.estimate.NoiseMeter;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HandStepTest {
    private static final double COUNT_VOLTS = 0.0001;

    private final HandStep load =
            new HandStep(new LoadedCell(new CellCard("A", Chemistry.LAYERED_OXIDE, 2, 20, false, false)));
    private NoiseMeter noise = new NoiseMeter();
    private long millis;
    private double amperes = Double.NaN;
    private double expandedVolts = 0.002;
    private boolean announced;
    private boolean drew = true;

    /** So many seconds at this voltage, with some counts of noise. */
    private void reads(double volts, int seconds, boolean saidOn) {
        for (int second = 0; second < seconds; second++) {
            millis += 1_000;
            double read = volts + ((millis / 1_000 * 7919) % 5 - 2) * COUNT_VOLTS;
            noise.add(read, COUNT_VOLTS);
            var scan = new Scan(
                    millis,
                    read,
                    expandedVolts,
                    COUNT_VOLTS,
                    amperes,
                    20,
                    20,
                    Double.NaN,
                    Double.NaN,
                    false,
                    Suspicion.NONE);
            double difference = noise.expandedDifference(COUNT_VOLTS);
            load.follow(new Reading(scan, 1_000, read, difference, false, announced), amperes, saidOn, drew);
        }
    }

    @Test
    void a_load_put_on_without_a_word_shows_by_its_sag() {
        reads(3.80, 120, false);
        reads(3.76, 20, false);
        assertThat(load.seems()).isEmpty();
        reads(3.76, 40, false);
        assertThat(load.seems()).contains(LoadStep.SEEMS_ON);
        reads(3.76, 10, true);
        assertThat(load.seems()).isEmpty();
    }

    /** Noise of 4.7 mV is no load put on, from the first reading on. */
    @Test
    void a_channel_that_has_only_just_begun_to_be_noisy_raises_no_question() {
        for (int seed = 0; seed < 200; seed++) {
            var random = new Random(seed);
            noise = new NoiseMeter();
            for (int second = 0; second < 90; second++) {
                reads(3.2 + 0.0047 * random.nextGaussian(), 1, false);
                assertThat(load.seems()).isEmpty();
            }
            load.forget();
        }
    }

    @Test
    void a_load_taken_off_without_a_word_shows_by_what_comes_back() {
        reads(3.60, 120, true);
        reads(3.64, 60, true);
        assertThat(load.seems()).contains(LoadStep.SEEMS_OFF);
    }

    @Test
    void near_empty_it_takes_a_third_more() {
        reads(0.080, 600, true);
        reads(0.095, 60, true);
        assertThat(load.seems()).isEmpty();
        reads(0.150, 60, true);
        assertThat(load.seems()).contains(LoadStep.SEEMS_OFF);
    }

    @Test
    void a_question_goes_away_with_what_raised_it() {
        reads(3.80, 120, false);
        reads(3.76, 60, false);
        reads(3.80, 30, false);
        assertThat(load.seems()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"0.0", "1.9", "3.796"})
    void a_lead_that_comes_off_and_a_few_millivolts_are_no_load(double volts) {
        reads(3.80, 120, false);
        reads(volts, 120, false);
        assertThat(load.seems()).isEmpty();
    }

    @Test
    void a_cell_that_drains_for_hours_raises_no_question() {
        for (int minute = 0; minute < 600; minute++) {
            reads(3.9 - minute * 0.0065, 60, true);
            assertThat(load.seems()).as("minute %d", minute).isEmpty();
        }
    }

    @Test
    void a_cell_that_recovers_slowly_off_its_load_raises_no_question() {
        for (int minute = 0; minute < 300; minute++) {
            reads(0.4 * (1 - Math.exp(-minute / 60.0)), 60, false);
            assertThat(load.seems()).as("minute %d", minute).isEmpty();
        }
    }

    @Test
    void where_amperes_are_measured_they_tell() {
        amperes = 0.18;
        reads(3.7, 20, false);
        assertThat(load.seems()).isEmpty();
        reads(3.7, 20, false);
        assertThat(load.seems()).contains(LoadStep.SEEMS_ON);
        reads(3.7, 60, true);
        assertThat(load.seems()).isEmpty();
        amperes = 0.001;
        reads(3.7, 60, true);
        assertThat(load.seems()).contains(LoadStep.SEEMS_OFF);
    }

    @Test
    void the_amperes_of_an_empty_cell_tell_nothing() {
        amperes = 0.001;
        reads(0.2, 120, true);
        assertThat(load.seems()).isEmpty();
    }

    @Test
    void a_step_of_both_kinds_is_certain() {
        reads(3.80, 120, false);
        reads(3.76, 60, false);
        assertThat(load.isCertain()).isTrue();
        reads(3.76, 60, true);
        assertThat(load.isCertain()).isFalse();
        reads(3.80, 60, true);
        assertThat(load.isCertain()).isTrue();
    }

    @Test
    void a_step_within_five_times_the_uncertainty_is_only_asked_about() {
        expandedVolts = 0.02;
        reads(3.60, 120, true);
        reads(3.64, 60, true);
        assertThat(load.seems()).contains(LoadStep.SEEMS_OFF);
        assertThat(load.isCertain()).isFalse();
    }

    @Test
    void a_lead_put_back_rises_from_nought_and_is_only_asked_about() {
        reads(0.0005, 120, true);
        reads(0.9, 60, true);
        assertThat(load.seems()).contains(LoadStep.SEEMS_OFF);
        assertThat(load.isCertain()).isFalse();
    }

    @Test
    void a_load_that_never_drew_was_not_taken_off() {
        drew = false;
        reads(3.60, 120, true);
        reads(3.64, 60, true);
        assertThat(load.isCertain()).isFalse();
    }

    @Test
    void an_open_input_that_floats_above_the_cell_is_no_load_taken_off() {
        reads(3.60, 120, true);
        reads(4.8, 60, true);
        assertThat(load.isCertain()).isFalse();
    }

    @Test
    void another_cell_put_on_the_channel_is_no_load_put_on() {
        reads(3.80, 120, false);
        reads(0.0, 3, false);
        reads(3.60, 120, false);
        assertThat(load.seems()).isEmpty();
    }

    @Test
    void amperes_that_flow_on_outweigh_a_step() {
        amperes = 0.18;
        reads(3.60, 120, true);
        reads(3.64, 60, true);
        assertThat(load.seems()).isEmpty();
    }

    @Test
    void announced_work_is_waited_for() {
        reads(3.60, 120, true);
        announced = true;
        reads(3.64, 300, true);
        assertThat(load.seems()).isEmpty();
        announced = false;
        reads(3.64, 40, true);
        assertThat(load.isCertain()).isTrue();
    }
}
