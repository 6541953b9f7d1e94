package org.ebbwatch.rig.sensor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.ebbwatch.rig.sensor.Conversion.Celsius;
import org.ebbwatch.rig.sensor.Conversion.Fault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ThermocoupleTest {
    private final Thermocouple k = new Thermocouple(ThermocoupleType.K, 0);

    /** Source: NIST ITS-90 reference functions, equal to the NIST tables at three decimals. */
    @ParameterizedTest
    @CsvSource({
        "-40, -1.527, -1.475", "-20, -0.778, -0.757", "-10, -0.392, -0.383", "10, 0.397, 0.391", "20, 0.798, 0.790",
        "25, 1.000, 0.992", "30, 1.203, 1.196", "40, 1.612, 1.612", "50, 2.023, 2.036", "60, 2.436, 2.468",
        "80, 3.267, 3.358", "85, 3.474, 3.585", "100, 4.096, 4.279", "120, 4.920, 5.228", "150, 6.138, 6.704",
        "200, 8.138, 9.288"
    })
    void millivolts_and_degrees_agree_with_the_tables(double celsius, double ofK, double ofT) {
        assertThat(ThermocoupleType.K.millivolts(celsius)).isCloseTo(ofK, within(0.00051));
        assertThat(ThermocoupleType.T.millivolts(celsius)).isCloseTo(ofT, within(0.00051));
        assertThat(ThermocoupleType.K.celsius(ofK)).isCloseTo(celsius, within(0.02));
        assertThat(ThermocoupleType.T.celsius(ofT)).isCloseTo(celsius, within(0.02));
    }

    @Property
    void degrees_come_back_from_their_millivolts(
            @ForAll ThermocoupleType type, @ForAll @DoubleRange(max = 1) @Scale(6) double part) {
        double celsius = -200 + part * (type.highestCelsius() + 200);
        assertThat(type.celsius(type.millivolts(celsius))).isCloseTo(celsius, within(1e-8));
    }

    /** Source: a published worked example, K at 60 degrees with its terminals at 25: 2.436 - 1.000 = 1.436 mV. */
    @Test
    void the_cold_junction_is_added_in_millivolts() {
        assertThat(celsius(k.convert(1.436, 0, 25, 0))).isCloseTo(60, within(0.02));
    }

    /** Source: the same: 4.096 mV looked up plainly gives 100.0, with terminals at 25 degrees the junction is at 124.3. */
    @Test
    void a_warm_terminal_is_not_forgotten() {
        assertThat(celsius(k.convert(4.096, 0, 0, 0))).isCloseTo(100.0, within(0.02));
        assertThat(celsius(k.convert(4.096, 0, 25, 0))).isCloseTo(124.3, within(0.05));
    }

    @Test
    void an_open_couple_is_open_and_what_is_no_temperature_is_none() {
        assertThat(k.convert(60, 0, 25, 0)).isEqualTo(Fault.OPEN);
        assertThat(k.convert(3.4e38, 0, 25, 0)).isEqualTo(Fault.OPEN);
        assertThat(k.convert(-7, 0, 25, 0)).isEqualTo(Fault.OUT_OF_RANGE);
        assertThat(k.convert(1, 0, 2000, 0)).isEqualTo(Fault.OUT_OF_RANGE);
        assertThat(k.convert(Double.NaN, 0, 25, 0)).isEqualTo(Fault.NOT_A_NUMBER);
        assertThat(k.convert(1, 0, Double.NaN, 0)).isEqualTo(Fault.NOT_A_NUMBER);
    }

    /** Near 60 degrees K gives 0.0414 mV/K, near 25 degrees 0.0405 mV/K (differences of the NIST table). */
    @Test
    void the_uncertainty_holds_couple_millivolts_and_terminals() {
        assertThat(expanded(k.convert(1.436, 0.0414, 25, 0))).isCloseTo(1.0, within(0.005));
        assertThat(expanded(k.convert(1.436, 0, 25, 1))).isCloseTo(0.0405 / 0.0414, within(0.005));
        assertThat(expanded(new Thermocouple(ThermocoupleType.K, 1.5).convert(1.436, 0, 25, 0)))
                .isCloseTo(2 * 1.5 / Math.sqrt(3), within(1e-9));
    }

    @Test
    void the_slope_is_that_of_the_reference_function() {
        for (ThermocoupleType type : ThermocoupleType.values()) {
            for (double t : new double[] {-150, -20, 40, 126.9686, 300}) {
                double difference = (type.millivolts(t + 0.01) - type.millivolts(t - 0.01)) / 0.02;
                assertThat(type.millivoltsPerKelvin(t)).isCloseTo(difference, within(1e-7));
            }
        }
    }

    @Test
    void what_lies_outside_a_type_is_refused() {
        assertThatThrownBy(() -> ThermocoupleType.T.millivolts(401)).hasMessageContaining("allowed");
        assertThatThrownBy(() -> ThermocoupleType.T.celsius(21)).hasMessageContaining("allowed");
        assertThatThrownBy(() -> ThermocoupleType.T.celsius(Double.NaN)).hasMessageContaining("allowed");
    }

    private static double celsius(Conversion conversion) {
        return ((Celsius) conversion).celsius();
    }

    private static double expanded(Conversion conversion) {
        return ((Celsius) conversion).expandedCelsius();
    }
}
