package org.ebbwatch.judge.estimate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.ebbwatch.sim.cell.ThermalNode;
import org.junit.jupiter.api.Test;

class SelfHeatingTest {

    @Test
    void of_a_steady_current_ends_at_its_power_times_the_path_to_the_air() {
        var heating = new SelfHeating(3);
        for (int second = 0; second < 20_000; second++) {
            heating.add(0.5, 0.1, 1);
        }
        assertThat(heating.kelvin()).isCloseTo(0.025 * 24, within(1e-3));
    }

    /** 14 J/K an ampere hour, 24 K/W: the lump of the simulated cells, stepped exactly. */
    @Test
    void follows_a_lump_of_heat_within_a_tenth_of_what_it_reaches() {
        var heating = new SelfHeating(3);
        var lump = new ThermalNode(42, 24, 20);
        lump.setStep(1);
        for (int second = 0; second < 6_000; second++) {
            double amperes = second < 3_000 ? 1 : 0;
            heating.add(amperes, 0.1, 1);
            lump.step(amperes * amperes * 0.1, 20);
            assertThat(heating.kelvin()).isCloseTo(lump.celsius() - 20, within(0.24));
        }
    }

    @Test
    void is_larger_for_a_small_cell() {
        var small = new SelfHeating(0.375);
        small.add(1, 0.1, 1);
        var large = new SelfHeating(3);
        large.add(1, 0.1, 1);
        assertThat(small.kelvin() / large.kelvin()).isCloseTo(4, within(1e-9));
    }
}
