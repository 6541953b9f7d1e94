package org.ebbwatch.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The voltage of a rested cell. */
class OpenCircuitTest {

    /** Computed from the formulas of Chen et al. 2020 as PyBaMM carries them. */
    @ParameterizedTest
    @CsvSource({
        "-3, 1.290",
        "-2, 1.834",
        "-1, 2.221",
        "-0.5, 2.371",
        "0, 2.498",
        "0.5, 2.605",
        "1, 2.695",
        "2, 2.837",
        "3, 2.940",
        "5, 3.073",
        "10, 3.258",
        "20, 3.449",
        "50, 3.708",
        "80, 4.022",
        "100, 4.193"
    })
    void nickel_oxide_against_graphite_shows_what_was_published(double percent, double volts) {
        assertThat(OpenCircuit.LAYERED_OXIDE.volts(percent / 100)).isCloseTo(volts, within(0.001));
    }

    /** The plateau of iron phosphate, from memory: 3.2 to 3.35 V between a third and nine tenths. */
    @ParameterizedTest
    @CsvSource({"33", "50", "90"})
    void iron_phosphate_keeps_to_its_plateau(double percent) {
        assertThat(OpenCircuit.IRON_PHOSPHATE.volts(percent / 100)).isBetween(3.2, 3.35);
    }

    @Property
    void a_voltage_leads_back_to_its_charge(@ForAll @DoubleRange(min = 0.01, max = 4.19) double volts) {
        OpenCircuit oxide = OpenCircuit.LAYERED_OXIDE;

        assertThat(oxide.volts(oxide.stateOfCharge(volts))).isCloseTo(volts, within(1e-6));
    }

    @Property
    void less_charge_never_shows_more_volts(
            @ForAll @DoubleRange(min = -0.05, max = 1) double one,
            @ForAll @DoubleRange(min = -0.05, max = 1) double other) {
        for (OpenCircuit curve : OpenCircuit.values()) {
            assertThat(curve.volts(Math.min(one, other)))
                    .isLessThanOrEqualTo(curve.volts(Math.max(one, other)) + 1e-12);
        }
    }

    /** Energy below a voltage, of 18.8 Wh: 0.2 % below 1.5 V, 1.7 below 2.5, 4.5 below 3.0, 14 below 3.4 (computed from Chen 2020). */
    @ParameterizedTest
    @CsvSource({"1.5, 0.04, 0.01", "2.5, 0.31, 0.02", "3.0, 0.84, 0.03", "3.4, 2.69, 0.06"})
    void little_energy_is_left_below_a_low_voltage(double volts, double wattHours, double tolerance) {
        OpenCircuit oxide = OpenCircuit.LAYERED_OXIDE;
        var cell = new AgedCell(oxide, 5.0, 0.03);
        double whole = new Discharge(cell, 1).heldWattHours();
        double left = new Discharge(cell, oxide.stateOfCharge(volts)).heldWattHours();

        assertThat(left * 18.8 / whole).isCloseTo(wattHours, within(tolerance));
    }
}
