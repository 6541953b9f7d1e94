package org.ebbwatch.sim.cell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CellTest {
    private static final double OHMS = 0.05;

    /** So large that its voltage stays: what is left is a linear circuit. */
    private static CellSpec huge(Relaxation relaxation) {
        return CellSpec.build("huge", Chemistry.NMC, 1000)
                .health(1)
                .stateOfCharge(0.5)
                .ohms(OHMS)
                .relaxation(relaxation)
                .done();
    }

    @Nested
    class A_linear_cell_into_a_resistor {
        private static final double LOAD = 2;
        private static final double FAST_OHMS = 0.2;
        private static final double FAST_SECONDS = 17;

        /** Closed form: one resistor-capacitor pair behind a source into a resistor. */
        private double closedFormVolts(double volts, double seconds) {
            double around = LOAD + OHMS;
            double rate = (1 + FAST_OHMS / around) / FAST_SECONDS;
            double settled = volts * FAST_OHMS / (around + FAST_OHMS);
            double lag = settled * (1 - StrictMath.exp(-rate * seconds));
            return (volts - lag) * LOAD / around;
        }

        private double greatestError(double stepSeconds) {
            LoadedCell loaded =
                    new LoadedCell(huge(new Relaxation.Exponentials(FAST_OHMS, FAST_SECONDS, 0, 100)), stepSeconds);
            double volts = loaded.cell.openCircuitVolts();
            double worst = 0;
            while (loaded.seconds() < 60) {
                loaded.step(LOAD);
                double expected = closedFormVolts(volts, loaded.seconds());
                worst = Math.max(worst, Math.abs(loaded.cell.volts() - expected));
            }
            return worst;
        }

        @Test
        void follows_the_closed_form() {
            assertThat(greatestError(0.01)).isLessThan(0.0002);
            assertThat(greatestError(1)).isLessThan(0.006);
        }

        @Test
        void errs_half_as_much_with_half_the_step() {
            assertThat(greatestError(1) / greatestError(0.5)).isBetween(1.9, 2.1);
        }
    }

    /** Independent reference: the same equations, but the formulas instead of tables, by another integrator. */
    private static final class Reference implements FirstOrderDifferentialEquations {
        private final Relaxation.Exponentials relaxation;
        private final double ohms;
        private final double load;
        private final double coulombs;

        private Reference(CellSpec spec, double load) {
            relaxation = (Relaxation.Exponentials) spec.relaxation();
            ohms = spec.ohms();
            this.load = load;
            coulombs = spec.ratedAmpereHours() * spec.health() * 3600;
        }

        private static double emptiness(double[] state) {
            return Math.exp(-Math.max(state[0], -0.01) / 0.018);
        }

        double amperes(double[] state) {
            double around = load + ohms * (1 + 0.5 * emptiness(state));
            return (Chemistry.NMC.openCircuitVolts(state[0]) - state[1] - state[2]) / around;
        }

        @Override
        public int getDimension() {
            return 3;
        }

        @Override
        public void computeDerivatives(double seconds, double[] state, double[] rates) {
            double amperes = amperes(state);
            double growth = 1 + 20 * emptiness(state);
            rates[0] = -amperes / coulombs;
            rates[1] = (amperes * relaxation.fastOhms() * growth - state[1]) / relaxation.fastSeconds();
            rates[2] = (amperes * relaxation.slowOhms() * growth - state[2]) / relaxation.slowSeconds();
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 4, 6, 6.4, 6.6})
    void a_drain_agrees_with_an_independent_integrator(double hours) {
        CellSpec spec = CellSpec.of("a", Chemistry.NMC, 2.6);
        double load = 10;
        LoadedCell loaded = new LoadedCell(spec, 1);
        loaded.run(hours, load);

        Reference reference = new Reference(spec, load);
        double[] state = {1, 0, 0};
        new DormandPrince853Integrator(1e-6, 20, 1e-9, 1e-9).integrate(reference, 0, state, hours * 3600, state);

        assertThat(loaded.cell.volts()).isCloseTo(reference.amperes(state) * load, within(0.003));
        assertThat(loaded.cell.stateOfCharge()).isCloseTo(state[0], within(2e-5));
    }

    @ParameterizedTest
    @CsvSource({"1, 10", "10, 60"})
    void a_longer_step_changes_a_drain_by_little(double shortStep, double longStep) {
        CellSpec spec = CellSpec.of("a", Chemistry.NMC, 2.6);
        LoadedCell one = new LoadedCell(spec, shortStep);
        LoadedCell other = new LoadedCell(spec, longStep);
        one.run(6, 10);
        other.run(6, 10);

        assertThat(other.cell.volts()).isCloseTo(one.cell.volts(), within(0.03));
    }

    @Nested
    class Bonding_a_cell_that_is_not_empty {
        /** A pouch of slow diffusion, a third full, across 6.5 milliohms: hardly a few millivolts after 18 min, and not empty. */
        @Test
        void shows_nearly_nothing_and_leaves_it_far_from_empty() {
            CellSpec pouch = CellSpec.build("pouch", Chemistry.NMC, 4.6)
                    .health(1)
                    .stateOfCharge(1)
                    .ohms(0.008)
                    .relaxation(new Relaxation.Diffusion(0.01, 20, 25_000))
                    .done();
            LoadedCell shorted = new LoadedCell(pouch, 1);
            shorted.run(1058.0 / 3600, 0.0065);

            assertThat(shorted.cell.volts()).isLessThan(0.1);
            assertThat(shorted.cell.restedVolts(1, 0)).isGreaterThan(3.0);
        }

        @Test
        void heats_it_until_its_separator_shuts() {
            LoadedCell shorted = new LoadedCell(CellSpec.of("full", Chemistry.NMC, 2.6), 1);
            double hottest = 0;
            for (int i = 0; i < 1800; i++) {
                shorted.step(0.01);
                hottest = Math.max(hottest, shorted.cell.celsius());
            }

            assertThat(hottest).isBetween(110.0, 160.0);
        }
    }

    @Test
    void a_cell_at_rest_stays_as_it_is() {
        LoadedCell resting = new LoadedCell(
                CellSpec.build("a", Chemistry.LFP, 2.6).stateOfCharge(0.4).done(), 10);
        double volts = resting.cell.volts();
        resting.rest(48);

        assertThat(resting.cell.volts()).isEqualTo(volts);
        assertThat(resting.cell.celsius()).isCloseTo(LoadedCell.AIR_CELSIUS, within(1e-9));
    }

    /** Source of the 3 K: limits in use, from memory: at C/5 or less a sound cell rises by less than 3 K. */
    @Test
    void a_drain_at_C_5_warms_a_cell_by_less_than_3_K() {
        LoadedCell loaded = new LoadedCell(CellSpec.of("a", Chemistry.NMC, 2.6), 10);
        double hottest = 0;
        while (loaded.cell.volts() > 0.1) {
            loaded.step(7.1);
            hottest = Math.max(hottest, loaded.cell.celsius());
        }

        assertThat(hottest - LoadedCell.AIR_CELSIUS).isBetween(0.3, 3.0);
    }

    /** Source: measured on an 18650 in still air, 778 s and 1200 s; computed 1100 s. */
    @Test
    void an_18650_cools_as_measured() {
        LoadedCell loaded = new LoadedCell(CellSpec.of("a", Chemistry.NMC, 3), 1);
        loaded.cell.begin();
        loaded.cell.finish(0);
        loaded.cell.warm(42 * 10, LoadedCell.AIR_CELSIUS);
        double warm = loaded.cell.celsius() - LoadedCell.AIR_CELSIUS;
        loaded.rest(1000.0 / 3600);
        double left = (loaded.cell.celsius() - LoadedCell.AIR_CELSIUS) / warm;

        assertThat(-1000 / Math.log(left)).isBetween(778.0, 1200.0);
    }

    @Test
    void the_resistance_that_shows_at_once_grows_towards_empty() {
        assertThat(stepOhms(0.0)).isGreaterThan(1.3 * stepOhms(0.5));
        assertThat(stepOhms(0.5)).isCloseTo(OHMS, within(0.001));
    }

    private static double stepOhms(double stateOfCharge) {
        Cell cell = new Cell(
                CellSpec.build("a", Chemistry.NMC, 2.6)
                        .stateOfCharge(stateOfCharge)
                        .ohms(OHMS)
                        .done(),
                1,
                1,
                21);
        cell.setStep(0.001);
        cell.begin();
        cell.trial(0);
        double open = cell.trialVolts();
        cell.trial(1);
        return open - cell.trialVolts();
    }
}
