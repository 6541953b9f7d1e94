package org.ebbwatch.rig.sensor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.ebbwatch.rig.sensor.Conversion.Celsius;
import org.ebbwatch.rig.sensor.Conversion.Fault;
import org.ebbwatch.rig.sensor.NtcCurve.Point;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class NtcTest {
    private static final Point AT_25 = new Point(25, 10_000);

    /** Source of the table: the maker's R-T column for the 103AT type. */
    @Nested
    class A_part_of_beta_3435 {
        @ParameterizedTest
        @CsvSource({
            "-40, 188500", "-30, 111300", "-20, 67770", "-10, 42470", "0, 27280", "10, 17960", "20, 12090", "25, 10000",
            "30, 8313", "40, 5827", "50, 4160", "60, 3020", "70, 2228", "80, 1668", "85, 1451", "90, 1266",
            "100, 973.1", "110, 757.6"
        })
        void is_found_within_eight_hundredths_of_a_kelvin_by_its_published_curve(double celsius, double ohms) {
            assertThat(PublishedNtc.BETA_3435.celsius(ohms)).isCloseTo(celsius, within(0.08));
        }

        @Test
        void gives_the_same_curve_through_three_points_of_its_table() {
            NtcCurve curve = NtcCurve.through(new Point(-20, 67_770), AT_25, new Point(85, 1_451), 757, 188_600, 0.08);
            assertThat(curve.a()).isCloseTo(8.864771487e-4, within(1e-12));
            assertThat(curve.b()).isCloseTo(2.515335655e-4, within(1e-13));
            assertThat(curve.d()).isCloseTo(1.930453502e-7, within(1e-15));
        }

        /** Source: computed from the table; the plain beta formula's own error. */
        @ParameterizedTest
        @CsvSource({
            "-40, 188500, 4.44",
            "-20, 67770, 2.53",
            "0, 27280, 1.11",
            "10, 17960, 0.58",
            "30, 8313, -0.14",
            "50, 4160, -0.43",
            "60, 3020, -0.42",
            "85, 1451, 0.01",
            "100, 973.1, 0.58"
        })
        void is_off_by_the_known_error_of_the_plain_beta_formula(double celsius, double ohms, double error) {
            NtcCurve beta = NtcCurve.beta(AT_25, 3435, 700, 200_000, 4.5);
            assertThat(beta.celsius(ohms) - celsius).isCloseTo(error, within(0.006));
        }
    }

    /** Source of the table and of its betas: the maker's data sheet, material type 1; ratio to the ohms at 25 degrees. */
    @Nested
    class A_part_of_beta_3977 {
        @ParameterizedTest
        @CsvSource({
            "-40, 33.36",
            "-20, 9.681",
            "0, 3.264",
            "10, 1.990",
            "20, 1.249",
            "25, 1",
            "30, 0.8056",
            "40, 0.5325",
            "45, 0.4367",
            "50, 0.3601",
            "60, 0.2487",
            "70, 0.1751",
            "85, 0.1070",
            "100, 0.06781",
            "125, 0.03403"
        })
        void is_found_within_fifteen_thousandths_of_a_kelvin(double celsius, double ratio) {
            assertThat(PublishedNtc.BETA_3977.celsius(ratio * 10_000)).isCloseTo(celsius, within(0.015));
        }

        @ParameterizedTest
        @CsvSource({"0, 50, 3892", "25, 50, 3937", "25, 85, 3977", "25, 100, 3992"})
        void has_the_published_betas(double cold, double hot, double beta) {
            NtcCurve curve = PublishedNtc.BETA_3977;
            double found = Math.log(curve.ohms(cold) / curve.ohms(hot)) / (1 / (cold + 273.15) - 1 / (hot + 273.15));
            assertThat(found).isCloseTo(beta, within(1.5));
        }
    }

    /** Source: the data sheet of a leaded part, coefficients and table; degrees computed. */
    @ParameterizedTest
    @CsvSource({"12490, 19.995", "8057, 30.007", "2986, 55.028", "2488, 60.025"})
    void a_leaded_part_is_found_by_its_four_coefficients(double ohms, double celsius) {
        assertThat(PublishedNtc.LEADED.celsius(ohms)).isCloseTo(celsius, within(0.0006));
    }

    /** Source: the table of the maker of a B25/50 = 3950 part; errors computed. */
    @ParameterizedTest
    @CsvSource({"-40, 283381.1, 4.91", "0, 32580.7, 0.59", "85, 1059.4, 0.83", "100, 673.0, 1.27", "150, 185.1, 3.47"})
    void a_part_of_beta_3950_is_off_by_the_known_error_of_the_plain_formula(double celsius, double ohms, double error) {
        NtcCurve wide = NtcCurve.beta(AT_25, 3950, 180, 300_000, 5);
        assertThat(wide.celsius(ohms) - celsius).isCloseTo(error, within(0.006));
    }

    @Test
    void the_plain_curve_of_beta_3950_stays_within_the_error_it_states() {
        NtcCurve plain = PublishedNtc.BETA_3950_PLAIN;
        assertThat(plain.celsius(32_580.7)).isCloseTo(0, within(plain.errorKelvin()));
        assertThat(plain.celsius(1_059.4)).isCloseTo(85, within(plain.errorKelvin()));
    }

    static Stream<NtcCurve> published() {
        return Stream.of(
                PublishedNtc.BETA_3435, PublishedNtc.BETA_3977, PublishedNtc.LEADED, PublishedNtc.BETA_3950_PLAIN);
    }

    @ParameterizedTest
    @MethodSource("published")
    void degrees_and_ohms_are_each_other_s_way_back(NtcCurve curve) {
        for (double ohms = curve.lowestOhms() * 1.001; ohms < curve.highestOhms(); ohms *= 1.07) {
            assertThat(curve.ohms(curve.celsius(ohms))).isCloseTo(ohms, within(ohms * 1e-12));
        }
    }

    @ParameterizedTest
    @MethodSource("published")
    void an_open_sensor_is_never_a_cold_one_and_a_short_never_a_hot_one(NtcCurve curve) {
        Ntc ntc = new Ntc(curve, 0.01);
        assertThat(ntc.convert(Double.POSITIVE_INFINITY, 0)).isEqualTo(Fault.OPEN);
        assertThat(ntc.convert(curve.highestOhms() * 1.001, 0)).isEqualTo(Fault.OPEN);
        assertThat(ntc.convert(curve.highestOhms() * 0.999, 0)).isInstanceOf(Celsius.class);
        assertThat(ntc.convert(curve.lowestOhms() * 1.001, 0)).isInstanceOf(Celsius.class);
        assertThat(ntc.convert(curve.lowestOhms() * 0.999, 0)).isEqualTo(Fault.SHORT);
        assertThat(ntc.convert(0, 0)).isEqualTo(Fault.SHORT);
        assertThat(ntc.convert(-5, 0)).isEqualTo(Fault.SHORT);
        assertThat(ntc.convert(Double.NaN, 0)).isEqualTo(Fault.NOT_A_NUMBER);
    }

    /** At 25 degrees of a plain beta curve, dT = T^2 / beta * dR / R: 298.15^2 / 3950 = 22.505 K for each unit of ln R. */
    @Test
    void the_uncertainty_holds_curve_tolerance_and_ohms() {
        NtcCurve curve = NtcCurve.beta(AT_25, 3950, 1_000, 33_000, 0.85);
        double ofCurve = 2 * 0.85 / Math.sqrt(3);
        double ofTolerance = 2 * 0.01 * 22.505 / Math.sqrt(3);
        double ofOhms = 100.0 / 10_000 * 22.505;
        assertThat(expanded(new Ntc(curve, 0).convert(10_000, 0))).isCloseTo(ofCurve, within(1e-4));
        assertThat(expanded(new Ntc(curve, 0.01).convert(10_000, 0)))
                .isCloseTo(Math.hypot(ofCurve, ofTolerance), within(1e-4));
        assertThat(expanded(new Ntc(curve, 0).convert(10_000, 100)))
                .isCloseTo(Math.hypot(ofCurve, ofOhms), within(1e-4));
    }

    @Test
    void a_curve_may_be_held_to_the_range_it_is_trusted_in() {
        NtcCurve indoors = PublishedNtc.BETA_3435.within(-1, 85);
        assertThat(indoors.celsius(27_280)).isCloseTo(0, within(0.08));
        assertThat(new Ntc(indoors, 0).convert(42_470, 0)).isEqualTo(Fault.OPEN);
        assertThat(new Ntc(indoors, 0).convert(973.1, 0)).isEqualTo(Fault.SHORT);
        assertThatThrownBy(() -> PublishedNtc.BETA_3435.within(0, 200)).hasMessageContaining("allowed");
    }

    @Test
    void a_curve_that_turns_back_is_refused() {
        assertThatThrownBy(() -> NtcCurve.beta(AT_25, -3950, 1_000, 33_000, 1)).hasMessageContaining("rise");
        assertThatThrownBy(() -> new NtcCurve(10_000, 3.35e-3, 2.5e-4, 0, -1e-4, 100, 300_000, 1))
                .hasMessageContaining("rise");
        assertThatThrownBy(() -> NtcCurve.beta(AT_25, 3950, 33_000, 1_000, 1)).hasMessageContaining("ohms");
    }

    @Test
    void what_lies_outside_a_curve_is_refused() {
        assertThatThrownBy(() -> PublishedNtc.BETA_3435.celsius(1e6)).hasMessageContaining("allowed");
        assertThatThrownBy(() -> PublishedNtc.BETA_3435.ohms(200)).hasMessageContaining("allowed");
        assertThatThrownBy(() -> PublishedNtc.BETA_3435.ohms(Double.NaN)).hasMessageContaining("allowed");
    }

    private static double expanded(Conversion conversion) {
        return ((Celsius) conversion).expandedCelsius();
    }
}
