package org.ebbwatch.rig.sensor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.ebbwatch.rig.sensor.Conversion.Celsius;
import org.ebbwatch.rig.sensor.Conversion.Fault;
import org.junit.jupiter.api.Test;

/** Two common kinds, 10 mV/K from 0 and from 500 mV at 0 degrees: common practice, no source. */
class LinearSensorTest {
    private final LinearSensor fromZero = new LinearSensor(0, 10, 2, 150, 1);
    private final LinearSensor withOffset = new LinearSensor(500, 10, -40, 125, 2);

    @Test
    void ten_millivolts_are_one_kelvin() {
        assertThat(celsius(fromZero.convert(253, 0))).isCloseTo(25.3, within(1e-9));
        assertThat(celsius(withOffset.convert(753, 0))).isCloseTo(25.3, within(1e-9));
        assertThat(celsius(withOffset.convert(250, 0))).isCloseTo(-25, within(1e-9));
    }

    @Test
    void a_shorted_input_is_not_cold_and_an_open_one_not_hot() {
        assertThat(fromZero.convert(0, 0)).isEqualTo(Fault.SHORT);
        assertThat(withOffset.convert(0, 0)).isEqualTo(Fault.SHORT);
        assertThat(fromZero.convert(3_300, 0)).isEqualTo(Fault.OPEN);
        assertThat(fromZero.convert(Double.POSITIVE_INFINITY, 0)).isEqualTo(Fault.OPEN);
        assertThat(fromZero.convert(Double.NaN, 0)).isEqualTo(Fault.NOT_A_NUMBER);
    }

    @Test
    void a_falling_line_is_open_where_it_would_be_coldest() {
        LinearSensor falling = new LinearSensor(2_000, -10, -40, 125, 1);
        assertThat(celsius(falling.convert(1_750, 0))).isCloseTo(25, within(1e-9));
        assertThat(falling.convert(2_500, 0)).isEqualTo(Fault.OPEN);
        assertThat(falling.convert(100, 0)).isEqualTo(Fault.SHORT);
    }

    /** U of 20 mV at 10 mV/K is 2 K; a half-width of 1 K is 2 x 1 / sqrt(3). */
    @Test
    void the_uncertainty_holds_the_part_and_the_millivolts() {
        Celsius found = (Celsius) fromZero.convert(253, 20);
        assertThat(found.expandedCelsius()).isCloseTo(Math.hypot(2, 1.154701), within(1e-6));
    }

    @Test
    void a_line_without_slope_or_range_is_refused() {
        assertThatThrownBy(() -> new LinearSensor(0, 0, 0, 100, 1)).hasMessageContaining("slope");
        assertThatThrownBy(() -> new LinearSensor(0, 10, 100, 100, 1)).hasMessageContaining("range");
    }

    private static double celsius(Conversion conversion) {
        return ((Celsius) conversion).celsius();
    }
}
