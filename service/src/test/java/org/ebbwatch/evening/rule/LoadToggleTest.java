package org.ebbwatch.evening.rule;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.ebbwatch.evening.rule.LoadAnswer.Kind;
import org.ebbwatch.evening.rule.LoadToggle.Seen;
import org.junit.jupiter.api.Test;

/** A cell of 3.8 V and 50 mOhm behind 10 Ohm reads E R / (R + r) on its load and E off it (Ohm's law): 3.7811 V and 3.8 V. */
class LoadToggleTest {
    private static final double EMF_VOLTS = 3.8;
    private static final double CELL_OHMS = 0.05;
    private static final double LOAD_OHMS = 10;
    private static final double ON_LOAD = EMF_VOLTS * LOAD_OHMS / (LOAD_OHMS + CELL_OHMS);
    private static final double RESOLUTION = 1e-4;
    private static final long INTERVAL = 1_000;

    private final Random noise = new Random(7);
    private final LoadToggle toggle = new LoadToggle(LOAD_OHMS, CELL_OHMS, INTERVAL);
    private double noiseVolts = 1e-4;
    private long millis;
    private int asked;

    private void see(int scans, double volts, double amperes, boolean applied) {
        for (int i = 0; i < scans; i++) {
            millis += INTERVAL;
            double read = volts + noiseVolts * noise.nextGaussian();
            asked += toggle.follow(new Seen(millis, read, amperes, RESOLUTION, applied)) ? 1 : 0;
        }
    }

    private void onItsLoad() {
        see(16, ON_LOAD, Double.NaN, true);
    }

    private void answers(Kind kind) {
        assertThat(toggle.answer()).map(LoadAnswer::kind).contains(kind);
    }

    @Test
    void the_cell_rises_while_it_is_open_and_falls_when_it_is_on_again() {
        onItsLoad();
        assertThat(asked).isEqualTo(1);
        see(1, EMF_VOLTS, Double.NaN, false);
        see(3, ON_LOAD, Double.NaN, true);

        answers(Kind.ANSWERS);
        assertThat(toggle.answer().orElseThrow().seen()).contains("V while open");
    }

    @Test
    void a_contact_that_conducts_while_it_says_open_is_no_answer() {
        onItsLoad();
        see(2, ON_LOAD, Double.NaN, false);
        see(3, ON_LOAD, Double.NaN, true);

        answers(Kind.NO_RESPONSE);
    }

    @Test
    void a_load_that_draws_nothing_after_it_closed_is_found() {
        onItsLoad();
        see(2, EMF_VOLTS, Double.NaN, false);
        see(3, EMF_VOLTS, Double.NaN, true);

        answers(Kind.DRAWS_NO_MORE);
    }

    @Test
    void a_switch_that_stays_on_and_one_that_stays_open_are_found() {
        onItsLoad();
        see(10, ON_LOAD, Double.NaN, true);
        answers(Kind.STAYS_ON);

        var other = new LoadToggleTest();
        other.onItsLoad();
        other.see(40, EMF_VOLTS, Double.NaN, false);
        other.answers(Kind.STAYS_OPEN);
    }

    @Test
    void a_current_decides_where_it_is_measured_however_noisy_the_volts() {
        noiseVolts = 0.1;
        see(16, ON_LOAD, ON_LOAD / LOAD_OHMS, true);
        see(1, EMF_VOLTS, 0, false);
        see(3, ON_LOAD, ON_LOAD / LOAD_OHMS, true);

        answers(Kind.ANSWERS);
    }

    @Test
    void what_noise_would_hide_is_not_opened_at_all() {
        noiseVolts = 0.01;
        onItsLoad();

        assertThat(asked).isZero();
        answers(Kind.TOO_FAINT);
    }

    @Test
    void readings_that_are_missing_break_it_off() {
        onItsLoad();
        millis += 60_000;
        see(1, EMF_VOLTS, Double.NaN, false);

        answers(Kind.INTERRUPTED);
    }

    @Property(tries = 300)
    void whatever_is_read_it_asks_at_most_once_and_only_with_the_load_on(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 200) int scans) {
        Random random = new Random(seed);
        var any = new LoadToggle(LOAD_OHMS, CELL_OHMS, INTERVAL);
        int opened = 0;
        long at = 0;
        for (int i = 0; i < scans; i++) {
            at += random.nextInt(20) == 0 ? 30_000 : INTERVAL;
            boolean applied = i < 20 || random.nextBoolean();
            double volts = random.nextInt(50) == 0 ? Double.NaN : ON_LOAD + 0.001 * random.nextGaussian();
            boolean open = any.follow(new Seen(at, volts, Double.NaN, RESOLUTION, applied));
            assertThat(open && !applied).isFalse();
            opened += open ? 1 : 0;
        }
        assertThat(opened).isLessThanOrEqualTo(1);
    }
}
