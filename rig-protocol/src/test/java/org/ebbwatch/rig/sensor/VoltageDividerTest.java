package org.ebbwatch.rig.sensor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class VoltageDividerTest {

    /** Source: a budget worked out after JCGM 100: two resistors of 0.1 %, 2:1, u = 1.715 mV at 4.2 V. */
    @Test
    void two_equal_resistors_halve_and_bring_the_uncertainty_of_the_worked_budget() {
        VoltageDivider half = new VoltageDivider(10_000, 10_000, 0.001);
        assertThat(half.factor()).isEqualTo(2);
        assertThat(half.expandedFraction() * 4.2 / 2).isCloseTo(0.001715, within(5e-7));
    }

    @Test
    void no_upper_resistor_is_no_divider() {
        VoltageDivider none = new VoltageDivider(0, 10_000, 0.01);
        assertThat(none.factor()).isEqualTo(1);
        assertThat(none.expandedFraction()).isZero();
    }

    @Test
    void impossible_resistors_are_refused() {
        assertThatThrownBy(() -> new VoltageDivider(-1, 1, 0)).hasMessageContaining("upperOhms");
        assertThatThrownBy(() -> new VoltageDivider(1, 0, 0)).hasMessageContaining("lowerOhms");
        assertThatThrownBy(() -> new VoltageDivider(1, 1, -0.1)).hasMessageContaining("toleranceFraction");
    }
}
