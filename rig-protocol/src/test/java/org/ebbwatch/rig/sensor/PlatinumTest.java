package org.ebbwatch.rig.sensor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.ebbwatch.rig.sensor.Conversion.Celsius;
import org.ebbwatch.rig.sensor.Conversion.Fault;
import org.ebbwatch.rig.sensor.Platinum.Nominal;
import org.ebbwatch.rig.sensor.Platinum.Tolerance;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Source of the tables: IEC 60751, computed from its reference function to three decimals, printed to two. */
class PlatinumTest {
    private final Platinum classA = new Platinum(Nominal.PT100, Tolerance.A);

    @ParameterizedTest
    @CsvSource({
        "-200, 18.520", "-100, 60.256", "-50, 80.306", "-40, 84.271", "-20, 92.160", "-10, 96.086", "0, 100.000",
        "10, 103.903", "20, 107.793", "25, 109.735", "40, 115.541", "45, 117.470", "50, 119.397", "60, 123.242",
        "80, 130.897", "85, 132.803", "100, 138.505", "120, 146.068", "150, 157.325", "200, 175.856"
    })
    void ohms_and_degrees_agree_with_the_reference_function(double celsius, double ohms) {
        assertThat(Nominal.PT100.ohms(celsius)).isCloseTo(ohms, within(0.0005));
        assertThat(celsius(classA.convert(Math.max(ohms, Nominal.PT100.ohms(-200)), 0)))
                .isCloseTo(celsius, within(0.0015));
    }

    @ParameterizedTest
    @CsvSource({"-40, 84.27", "50, 119.40", "100, 138.51", "150, 157.33", "850, 390.48"})
    void ohms_agree_with_printed_tables(double celsius, double printed) {
        assertThat(Nominal.PT100.ohms(celsius)).isCloseTo(printed, within(0.0051));
    }

    @ParameterizedTest
    @CsvSource({"-40, 84.21", "100, 138.50", "150, 157.32"})
    void ohms_are_not_those_of_the_older_curve(double celsius, double olderOhms) {
        assertThat(Math.abs(Nominal.PT100.ohms(celsius) - olderOhms)).isGreaterThan(0.004);
    }

    @Property
    void degrees_come_back_from_their_ohms(@ForAll @DoubleRange(min = -199.99, max = 849.99) double celsius) {
        assertThat(celsius(classA.convert(Nominal.PT100.ohms(celsius), 0))).isCloseTo(celsius, within(1e-7));
    }

    @Test
    void fewer_ohms_than_at_the_coldest_are_a_short_and_more_than_at_the_hottest_are_open() {
        assertThat(classA.convert(18.51, 0)).isEqualTo(Fault.SHORT);
        assertThat(classA.convert(0, 0)).isEqualTo(Fault.SHORT);
        assertThat(classA.convert(390.49, 0)).isEqualTo(Fault.OPEN);
        assertThat(classA.convert(Double.POSITIVE_INFINITY, 0)).isEqualTo(Fault.OPEN);
        assertThat(classA.convert(3.4e38, 0)).isEqualTo(Fault.OPEN);
        assertThat(classA.convert(Double.NaN, 0)).isEqualTo(Fault.NOT_A_NUMBER);
    }

    /** At 100 degrees class A may be off by 0.35 K; 0.379 ohms per kelvin there (from the reference function's slope). */
    @Test
    void the_uncertainty_holds_the_class_and_the_ohms() {
        double ofClass = 2 * 0.35 / Math.sqrt(3);
        assertThat(expanded(classA.convert(138.505, 0))).isCloseTo(ofClass, within(1e-4));
        assertThat(expanded(classA.convert(138.505, 0.379))).isCloseTo(Math.hypot(ofClass, 1.0), within(1e-3));
        assertThat(expanded(new Platinum(Nominal.PT100, Tolerance.B).convert(138.505, 0)))
                .isCloseTo(2 * 0.80 / Math.sqrt(3), within(1e-4));
    }

    @ParameterizedTest
    @CsvSource({"-40, 842.71", "0, 1000.00", "25, 1097.35", "60, 1232.42", "100, 1385.05", "200, 1758.56"})
    void a_pt1000_has_ten_times_the_ohms(double celsius, double ohms) {
        Platinum pt1000 = new Platinum(Nominal.PT1000, Tolerance.A);
        assertThat(Nominal.PT1000.ohms(celsius)).isCloseTo(ohms, within(0.006));
        assertThat(celsius(pt1000.convert(ohms, 0))).isCloseTo(celsius, within(0.01));
        assertThat(pt1000.convert(100, 0)).isEqualTo(Fault.SHORT);
        assertThat(pt1000.convert(3_905, 0)).isEqualTo(Fault.OPEN);
    }

    @Test
    void a_temperature_outside_the_function_is_refused() {
        assertThatThrownBy(() -> Nominal.PT100.ohms(-200.1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Nominal.PT100.ohms(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> classA.convert(100, -1)).hasMessageContaining("expandedOhms");
    }

    private static double celsius(Conversion conversion) {
        return ((Celsius) conversion).celsius();
    }

    private static double expanded(Conversion conversion) {
        return ((Celsius) conversion).expandedCelsius();
    }
}
