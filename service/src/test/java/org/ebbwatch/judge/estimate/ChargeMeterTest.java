package org.ebbwatch.judge.estimate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Charge and energy, held against what can be worked out and against an independent integrator (Commons Math). */
class ChargeMeterTest {
    private static final int SECONDS = 36_000;

    @Test
    void of_a_cell_falling_evenly_on_a_resistor_is_the_area_below_it() {
        var meter = new ChargeMeter(() -> 0);
        for (int second = 0; second <= 3600; second++) {
            double volts = 4.0 - second / 3600.0;
            meter.onLoad(volts, 1e-9, volts / 10, false, second == 0 ? 0 : 1);
        }
        // 3.5 V / 10 ohms for one hour; energy is the integral of V^2 / R = (64 - 27) / 3 / 10
        assertThat(meter.ampereHours()).isCloseTo(0.35, within(1e-12));
        assertThat(meter.wattHours()).isCloseTo(37.0 / 30, within(1e-12));
    }

    @Test
    void agree_with_an_independent_integrator_to_a_billionth() {
        var meter = new ChargeMeter(() -> 0);
        for (int second = 0; second <= SECONDS; second++) {
            meter.onLoad(falling(second), 1e-9, falling(second) / 7, false, second == 0 ? 0 : 1);
        }
        double charge = integral(second -> falling(second) / 7) / 3600;
        double energy = integral(second -> falling(second) * falling(second) / 7) / 3600;

        assertThat(meter.ampereHours() / charge).isCloseTo(1, within(1e-9));
        assertThat(meter.wattHours() / energy).isCloseTo(1, within(1e-9));
    }

    @Test
    void are_known_to_half_a_percent_where_voltage_and_load_are_known_to_two_thousandths() {
        ChargeMeter meter = drained(10, 0.02, volts -> 0.002 * volts, volts -> volts);

        assertThat(meter.expandedAmpereHours() / meter.ampereHours()).isBetween(0.0028, 0.005);
        assertThat(meter.expandedWattHours() / meter.wattHours()).isBetween(0.0040, 0.005);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void lie_within_their_uncertainty_for_channels_loads_and_leads_drawn_at_random(long seed) {
        var random = new Random(seed);
        ChargeMeter truth = drained(10, 0, volts -> 1e-9, volts -> volts);
        int channels = 200;
        int chargeInside = 0;
        int energyInside = 0;
        for (int channel = 0; channel < channels; channel++) {
            // Half-widths: gain 0.2 %, offset 2 mV, load 0.2 %, leads 0 to 20 milliohms; noise 1 mV.
            double gain = 1 + 0.002 * even(random);
            double offset = 0.002 * even(random);
            double trueOhms = 10 * (1 + 0.002 * even(random)) + 0.010 + 0.010 * even(random);
            double expandedOhms = 2 * Math.hypot(0.02, 0.010) / Math.sqrt(3);
            ChargeMeter meter = drained(
                    10.010,
                    expandedOhms,
                    volts -> 2 * Math.hypot(0.002 * volts, 0.002) / Math.sqrt(3),
                    volts -> gain * volts + offset + 0.001 * random.nextGaussian());
            double charge = truth.ampereHours() * 10 / trueOhms;
            double energy = truth.wattHours() * 10 / trueOhms;
            chargeInside += Math.abs(meter.ampereHours() - charge) <= meter.expandedAmpereHours() ? 1 : 0;
            energyInside += Math.abs(meter.wattHours() - energy) <= meter.expandedWattHours() ? 1 : 0;
        }
        assertThat(chargeInside / (double) channels).isBetween(0.93, 1.0);
        assertThat(energyInside / (double) channels).isBetween(0.93, 1.0);
    }

    @Test
    void by_a_measured_current_do_not_depend_on_the_load() {
        var meter = new ChargeMeter(() -> 0.5);
        meter.onLoad(4, 0.004, 1.0, true, 0);
        meter.onLoad(4, 0.004, 1.0, true, 3600);

        assertThat(meter.ampereHours()).isCloseTo(1, within(1e-12));
        assertThat(meter.expandedAmpereHours()).isCloseTo(0.01, within(1e-12));
        assertThat(meter.expandedWattHours()).isCloseTo(Math.hypot(0.04, 0.004), within(1e-12));
    }

    @Test
    void are_not_claimed_across_an_interruption() {
        var meter = new ChargeMeter(() -> 0.01);
        meter.onLoad(4, 1e-9, 0.4, false, 0);
        meter.onLoad(4, 1e-9, 0.4, false, 3600);
        meter.interrupt();
        meter.onLoad(4, 1e-9, 0.4, false, 3600);

        assertThat(meter.ampereHours()).isCloseTo(0.4, within(1e-12));
        assertThat(meter.expandedAmpereHours()).isCloseTo(0.004, within(1e-9));
    }

    @Test
    void are_taken_from_the_current_where_only_the_voltage_is_missing_and_the_energy_stays_finite() {
        var meter = new ChargeMeter(() -> 0.01);
        meter.onLoad(4, 0.01, 1.0, true, 0);
        meter.onLoad(Double.NaN, 0.01, 1.0, true, 3600);
        meter.onLoad(4, 0.01, 1.0, true, 3600);
        meter.onLoad(4, 0.01, 1.0, true, 3600);

        assertThat(meter.ampereHours()).isCloseTo(3, within(1e-12));
        assertThat(meter.wattHours()).isCloseTo(4, within(1e-12));
        assertThat(meter.expandedWattHours()).isFinite();
    }

    private static double falling(double second) {
        return 3.2 + 0.8 * Math.exp(-second / 9_000) + 0.1 * Math.sin(second / 5_000);
    }

    private static ChargeMeter drained(
            double ohms, double expandedOhms, DoubleUnaryOperator expandedVolts, DoubleUnaryOperator channel) {
        var meter = new ChargeMeter(() -> expandedOhms / ohms);
        for (int second = 0; second <= SECONDS; second += 10) {
            double volts = falling(second);
            double read = channel.applyAsDouble(volts);
            meter.onLoad(read, expandedVolts.applyAsDouble(volts), read / ohms, false, second == 0 ? 0 : 10);
        }
        return meter;
    }

    private static double integral(DoubleUnaryOperator of) {
        return new IterativeLegendreGaussIntegrator(5, 1e-13, 1e-13)
                .integrate(10_000_000, of::applyAsDouble, 0, SECONDS);
    }

    private static double even(Random random) {
        return 2 * random.nextDouble() - 1;
    }
}
