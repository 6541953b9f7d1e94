package org.ebbwatch.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import java.util.Random;
import org.ebbwatch.calibration.UncertaintyBudget.Channel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The worked example: a 12-bit converter, 4.096 V reference within 0.1 %, a divider of two equal resistors within 0.1 %, so
 * 2.000 mV a count, offset within 2 mV (computed by the method of JCGM 100).
 */
class UncertaintyBudgetTest {
    private static final Channel WORKED = new Channel(0.002, 0.001, 10_000, 10_000, 0.001, 0.002, 0, 0);

    @ParameterizedTest
    @CsvSource({
        "4.2, 0.577, 2.425, 1.715, 1.155, 3.238, 6.48",
        "3.0, 0.577, 1.732, 1.225, 1.155, 2.483, 4.97",
        "1.0, 0.577, 0.577, 0.408, 1.155, 1.472, 2.94",
        "0.05, 0.577, 0.029, 0.020, 1.155, 1.291, 2.58"
    })
    void the_worked_example_comes_out_to_the_printed_digits(
            double volts, String count, String reference, String divider, String offset, String all, String expanded) {
        UncertaintyBudget budget = WORKED.at(volts);

        assertThat(millivolts(budget.resolutionVolts(), 3)).isEqualTo(count);
        assertThat(millivolts(budget.referenceVolts(), 3)).isEqualTo(reference);
        assertThat(millivolts(budget.dividerVolts(), 3)).isEqualTo(divider);
        assertThat(millivolts(budget.offsetVolts(), 3)).isEqualTo(offset);
        assertThat(millivolts(budget.standardVolts(), 3)).isEqualTo(all);
        assertThat(millivolts(budget.expandedVolts(), 2)).isEqualTo(expanded);
    }

    @Test
    void without_a_divider_its_resistors_add_nothing() {
        assertThat(new Channel(0.001, 0.001, 0, 1, 0.05, 0, 0, 0).at(4).dividerVolts())
                .isZero();
    }

    @Test
    void calibration_and_noise_add_in_quadrature_to_the_rest() {
        UncertaintyBudget budget = new Channel(0, 0, 0, 1, 0, 0, 0.006, 0.004).at(3.7);

        assertThat(budget.standardVolts()).isCloseTo(0.005, within(1e-15));
        assertThat(budget.expandedVolts()).isCloseTo(0.010, within(1e-15));
    }

    /** Drawing every contribution from its own distribution (JCGM 101): U holds 95 % and a little more. */
    @Test
    void most_channels_drawn_at_random_read_within_their_expanded_uncertainty() {
        var random = new Random(11);
        int channels = 20_000;
        int inside = 0;
        for (int channel = 0; channel < channels; channel++) {
            double reference = 1 + 0.001 * even(random);
            double upper = 10_000 * (1 + 0.001 * even(random));
            double lower = 10_000 * (1 + 0.001 * even(random));
            double converter = 4.2 * lower / (upper + lower) / reference + 0.001 * even(random);
            double reads = 2 * Math.round(converter / 0.001) * 0.001;
            inside += Math.abs(reads - 4.2) <= WORKED.at(4.2).expandedVolts() ? 1 : 0;
        }
        assertThat(inside / (double) channels).isBetween(0.95, 0.99);
    }

    @Test
    void a_negative_half_width_is_refused() {
        assertThatThrownBy(() -> new Channel(0.002, -0.001, 0, 1, 0, 0, 0, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("referenceHalfWidth");
        assertThatThrownBy(() -> new Channel(0.002, 0.001, 1, 0, 0, 0, 0, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("lowerOhms");
    }

    private static double even(Random random) {
        return 2 * random.nextDouble() - 1;
    }

    private static String millivolts(double volts, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", volts * 1000);
    }
}
