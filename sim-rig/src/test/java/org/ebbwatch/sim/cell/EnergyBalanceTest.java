package org.ebbwatch.sim.cell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Chemical energy, integrated from the published formulas over the charge that left, against load heat by V²/R, heat given to
 * the air, heat kept as warmth and what is left in polarisation, each from its own account.
 */
class EnergyBalanceTest {
    static List<Arguments> cells() {
        return List.of(
                Arguments.of(Chemistry.NMC, false, SlowShare.NONE, 1.0),
                Arguments.of(Chemistry.NMC, false, SlowShare.TYPICAL, 10.0),
                Arguments.of(Chemistry.NMC, true, SlowShare.NONE, 1.0),
                Arguments.of(Chemistry.NMC, true, SlowShare.TYPICAL, 10.0),
                Arguments.of(Chemistry.LFP, false, SlowShare.NONE, 10.0),
                Arguments.of(Chemistry.LFP, true, SlowShare.TYPICAL, 1.0));
    }

    private static LoadedCell drained(Chemistry chemistry, boolean diffuses, SlowShare slow, double step) {
        CellSpec.Builder spec = CellSpec.build("a", chemistry, 2.6).slowShare(slow);
        LoadedCell loaded = new LoadedCell((diffuses ? spec.diffusion() : spec.exponentials()).done(), step);
        loaded.run(5, 9);
        loaded.rest(1);
        loaded.run(20, 9);
        return loaded;
    }

    private static double chemicalJoules(Chemistry chemistry, double coulombs, double from, double to) {
        int slices = 200_000;
        double sum = 0;
        for (int i = 0; i < slices; i++) {
            sum += chemistry.openCircuitVolts(from + (i + 0.5) / slices * (to - from));
        }
        return coulombs * sum / slices * (from - to);
    }

    @ParameterizedTest
    @MethodSource("cells")
    void chemical_energy_out_is_load_heat_and_own_heat(
            Chemistry chemistry, boolean diffuses, SlowShare slow, double step) {
        LoadedCell loaded = drained(chemistry, diffuses, slow, step);
        loaded.rest(150);
        Cell cell = loaded.cell;
        double chemical = chemicalJoules(chemistry, cell.coulombs(), 1, cell.stateOfCharge());
        double ownHeat = cell.lostJoules() + cell.joulesPerKelvin() * (cell.celsius() - LoadedCell.AIR_CELSIUS);

        assertThat(ownHeat).isGreaterThan(0.005 * chemical);
        assertThat(loaded.loadJoules() + ownHeat).isCloseTo(chemical, within(0.001 * chemical));
    }

    @ParameterizedTest
    @MethodSource("cells")
    void in_the_middle_of_a_drain_the_rest_is_stored(
            Chemistry chemistry, boolean diffuses, SlowShare slow, double step) {
        CellSpec.Builder spec = CellSpec.build("a", chemistry, 2.6).slowShare(slow);
        LoadedCell loaded = new LoadedCell((diffuses ? spec.diffusion() : spec.exponentials()).done(), step);
        double before = loaded.cell.storedJoules();
        loaded.run(2, 5);
        Cell cell = loaded.cell;
        double ownHeat = cell.lostJoules() + cell.joulesPerKelvin() * (cell.celsius() - LoadedCell.AIR_CELSIUS);

        double out = before - cell.storedJoules();
        assertThat(loaded.loadJoules() + ownHeat).isCloseTo(out, within(1e-9 * before));
        double chemical = chemicalJoules(chemistry, cell.coulombs(), 1, cell.stateOfCharge());
        assertThat(chemical - out).isBetween(0.0, 0.02 * chemical);
    }

    @ParameterizedTest
    @MethodSource("cells")
    void losses_never_cool_the_cell(Chemistry chemistry, boolean diffuses, SlowShare slow, double step) {
        CellSpec.Builder spec = CellSpec.build("a", chemistry, 2.6).slowShare(slow);
        LoadedCell loaded = new LoadedCell((diffuses ? spec.diffusion() : spec.exponentials()).done(), step);
        double least = 0;
        for (int i = 0; i < 12 * 3600 / step; i++) {
            loaded.step(i % 2000 < 1500 ? 9 : Double.POSITIVE_INFINITY);
            least = Math.min(least, loaded.cell.heatJoules());
        }

        assertThat(least).isGreaterThan(-1e-6);
    }
}
