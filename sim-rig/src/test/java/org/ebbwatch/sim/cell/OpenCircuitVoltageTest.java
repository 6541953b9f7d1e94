package org.ebbwatch.sim.cell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class OpenCircuitVoltageTest {
    private static final double EMPTY = -0.034;

    /** Source of every row: computed from the formulas of Chen et al. 2020 with x 0.0279..0.9014, y 0.9084..0.2661. */
    @ParameterizedTest
    @CsvSource({
        "-3, 1.290, 2.26",
        "-2, 1.834, 1.72",
        "-1, 2.221, 1.34",
        "-0.5, 2.371, 1.19",
        "0, 2.498, 1.06",
        "0.5, 2.605, 0.96",
        "1, 2.695, 0.87",
        "2, 2.837, 0.73",
        "3, 2.940, 0.64",
        "5, 3.073, 0.52",
        "10, 3.258, 0.36",
        "20, 3.449, 0.22",
        "50, 3.708, 0.13",
        "80, 4.022, 0.09",
        "100, 4.193, 0.09"
    })
    void the_layered_oxide_cell_has_the_published_voltage(double percent, double volts, double anodeVolts) {
        assertThat(Chemistry.NMC.openCircuitVolts(percent / 100)).isCloseTo(volts, within(0.0005));
        assertThat(Chemistry.NMC.anodeVolts(percent / 100)).isCloseTo(anodeVolts, within(0.006));
    }

    /** Source: computed from the formula of Afshar et al. 2017: 3.398 V at half, 3.39 V minus 0.9 V at full lithium. */
    @Test
    void the_iron_phosphate_cathode_has_the_published_potential() {
        assertThat(Chemistry.LFP.cathodeOf(0.5)).isCloseTo(3.398, within(0.0005));
        assertThat(Chemistry.LFP.cathodeOf(1)).isCloseTo(2.487, within(0.0005));
    }

    /** Source: computed from the same formulas; joules left below a voltage over joules of the whole cell. */
    @ParameterizedTest
    @CsvSource({"1.5, 0.2", "2.0, 0.7", "2.5, 1.7", "2.7, 2.4", "3.0, 4.5", "3.2, 8.2", "3.4, 14"})
    void the_energy_left_below_a_voltage_is_the_published_share(double volts, double percent) {
        double whole = energyBetween(Chemistry.NMC.stateOfChargeOfBareGraphite(), 1);
        double left = energyBetween(Chemistry.NMC.stateOfChargeOfBareGraphite(), stateOfChargeAt(volts));

        assertThat(100 * left / whole).isCloseTo(percent, within(percent < 10 ? 0.06 : 0.5));
    }

    @ParameterizedTest
    @EnumSource(Chemistry.class)
    void below_bare_graphite_the_cell_falls_through_0_V_with_almost_no_more_charge(Chemistry chemistry) {
        double bare = chemistry.stateOfChargeOfBareGraphite();

        assertThat(chemistry.openCircuitVolts(bare)).isBetween(0.5, 1.3);
        assertThat(chemistry.openCircuitVolts(bare - 0.002)).isBetween(-0.8, 0.0);
        assertThat(chemistry.anodeVolts(bare - 0.0015)).isGreaterThan(3.0);
    }

    @ParameterizedTest
    @EnumSource(Chemistry.class)
    void voltage_never_rises_while_charge_leaves(Chemistry chemistry) {
        for (double state = 1; state > -0.06; state -= 0.0001) {
            assertThat(chemistry.openCircuitVolts(state - 0.0001))
                    .isLessThanOrEqualTo(chemistry.openCircuitVolts(state));
        }
    }

    @ParameterizedTest
    @EnumSource(Chemistry.class)
    void the_table_keeps_to_the_formulas_within_a_tenth_of_a_millivolt(Chemistry chemistry) {
        OcvTable table = OcvTable.of(chemistry);
        double bend = chemistry.stateOfChargeOfBareGraphite();
        for (double state = -0.06; state < 1.02; state += 0.000_013_7) {
            double volts = table.cathodeVolts(state) - table.anodeVolts(state);
            double allowed = Math.abs(state - bend) < 0x1p-16 ? 0.003 : 0.0001;
            assertThat(volts).isCloseTo(chemistry.openCircuitVolts(state), within(allowed));
        }
    }

    @ParameterizedTest
    @EnumSource(Chemistry.class)
    void the_table_s_energy_is_the_integral_of_its_voltage(Chemistry chemistry) {
        OcvTable table = OcvTable.of(chemistry);
        double tabulated = table.cathodeEnergy(0.9)
                - table.anodeEnergy(0.9)
                - table.cathodeEnergy(EMPTY)
                + table.anodeEnergy(EMPTY);

        assertThat(tabulated).isCloseTo(energyBetween(chemistry, EMPTY, 0.9), within(2e-5));
        double slope = (table.anodeEnergy(-0.0333 + 1e-7) - table.anodeEnergy(-0.0333)) / 1e-7;
        assertThat(slope).isCloseTo(table.anodeVolts(-0.0333), within(1e-3));
    }

    @Test
    void beyond_its_ends_the_table_stays_level_and_its_energy_goes_on() {
        OcvTable table = OcvTable.of(Chemistry.NMC);

        assertThat(table.anodeVolts(-0.5)).isEqualTo(table.anodeVolts(-0.0625));
        assertThat(table.anodeEnergy(-0.5) - table.anodeEnergy(-0.6))
                .isCloseTo(0.1 * table.anodeVolts(-0.5), within(1e-9));
    }

    private static double energyBetween(double from, double to) {
        return energyBetween(Chemistry.NMC, from, to);
    }

    private static double energyBetween(Chemistry chemistry, double from, double to) {
        int slices = 200_000;
        double sum = 0;
        for (int i = 0; i < slices; i++) {
            sum += chemistry.openCircuitVolts(from + (i + 0.5) / slices * (to - from));
        }
        return sum / slices * (to - from);
    }

    private static double stateOfChargeAt(double volts) {
        double low = Chemistry.NMC.stateOfChargeOfBareGraphite();
        double high = 1;
        while (high - low > 1e-9) {
            double middle = (low + high) / 2;
            if (Chemistry.NMC.openCircuitVolts(middle) < volts) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
