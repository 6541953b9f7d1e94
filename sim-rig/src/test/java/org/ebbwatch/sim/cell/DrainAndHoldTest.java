package org.ebbwatch.sim.cell;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What the procedure rests on: a drain at C/5 to C/10, a hold at less than 0.10 V, a rest. */
class DrainAndHoldTest {
    private static final double RATED = 2.6;
    private static final double RESTED_LIMIT = 0.50;
    private static final double STEP_SECONDS = 10;

    static List<Arguments> cells() {
        List<Arguments> all = new ArrayList<>();
        for (Chemistry chemistry : Chemistry.values()) {
            for (boolean diffuses : new boolean[] {false, true}) {
                for (int hours : new int[] {5, 7, 10}) {
                    all.add(Arguments.of(chemistry, diffuses, hours));
                }
            }
        }
        return all;
    }

    private static double ohmsFor(Chemistry chemistry, int hours) {
        return chemistry.openCircuitVolts(0.5) * hours / RATED;
    }

    private static LoadedCell cell(Chemistry chemistry, boolean diffuses, SlowShare slow) {
        CellSpec.Builder spec = CellSpec.build("a", chemistry, RATED).slowShare(slow);
        return new LoadedCell((diffuses ? spec.diffusion() : spec.exponentials()).done(), STEP_SECONDS);
    }

    @ParameterizedTest
    @MethodSource("cells")
    void a_hold_of_12_h_empties_a_normal_cell(Chemistry chemistry, boolean diffuses, int hours) {
        LoadedCell loaded = cell(chemistry, diffuses, SlowShare.NONE);
        loaded.hold(12, ohmsFor(chemistry, hours));

        assertThat(loaded.cell.restedVolts(24, 0)).isLessThan(RESTED_LIMIT);
        loaded.rest(24);
        assertThat(loaded.cell.volts()).isLessThan(RESTED_LIMIT);
    }

    @ParameterizedTest
    @MethodSource("cells")
    void a_slow_cell_comes_back_once_and_not_after_a_second_hold(Chemistry chemistry, boolean diffuses, int hours) {
        LoadedCell loaded = cell(chemistry, diffuses, SlowShare.TYPICAL);
        double ohms = ohmsFor(chemistry, hours);
        loaded.hold(12, ohms);
        double forecast = loaded.cell.restedVolts(24, 0);
        loaded.rest(24);
        assertThat(loaded.cell.volts()).isGreaterThan(RESTED_LIMIT).isBetween(forecast - 0.005, forecast + 0.005);

        loaded.hold(24, ohms);
        loaded.rest(24);
        assertThat(loaded.cell.volts()).isLessThan(RESTED_LIMIT);
    }

    /** A slow cell as the procedure expects it: 0.045 V at 10 min, 0.38 V at 3 h, 0.86 V at 24 h. */
    @Test
    void a_slow_cell_comes_back_in_the_known_shape() {
        LoadedCell loaded = cell(Chemistry.NMC, true, SlowShare.TYPICAL);
        loaded.hold(12, ohmsFor(Chemistry.NMC, 7));

        loaded.rest(1.0 / 6);
        assertThat(loaded.cell.volts()).isBetween(0.025, 0.06);
        loaded.rest(3 - 1.0 / 6);
        assertThat(loaded.cell.volts()).isBetween(0.30, 0.46);
        loaded.rest(21);
        assertThat(loaded.cell.volts()).isBetween(0.77, 0.95);
    }

    /** A protection board takes less than 0.03 % of rated charge from 1.2 V to 0.3 V; a healthy cell at least 0.09 %. */
    @ParameterizedTest
    @MethodSource("cells")
    void a_healthy_cell_gives_charge_while_it_falls(Chemistry chemistry, boolean diffuses, int hours) {
        LoadedCell loaded = cell(chemistry, diffuses, SlowShare.NONE);
        double ohms = ohmsFor(chemistry, hours);
        assertThat(loaded.runUntil(ohms, 40, () -> loaded.cell.volts() < 1.2)).isTrue();
        double before = loaded.coulombs();
        assertThat(loaded.runUntil(ohms, 40, () -> loaded.cell.volts() < 0.3)).isTrue();

        assertThat((loaded.coulombs() - before) / (RATED * 3600)).isGreaterThan(0.0009);
    }
}
