package org.ebbwatch.sim.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.SetLoad;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Trigger;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.ebbwatch.sim.scenario.StringSpec;
import org.junit.jupiter.api.Test;

class SeriesStringTest {
    private static TestRack string(CellSpec a, CellSpec b, CellSpec c, Fault... faults) {
        return new TestRack(TestRack.board(member(a), member(b), member(c))
                .measuresAmperes(true)
                .strings(List.of(new StringSpec(0, 3, 20, true)))
                .faults(List.of(faults))
                .done());
    }

    private static ChannelSpec member(CellSpec cell) {
        return new ChannelSpec(ChannelRole.CELL, Optional.of(cell), 0, 0, 0, false, false, true);
    }

    @Test
    void one_switch_and_one_current_serve_all_cells() {
        TestRack rack = string(
                TestRack.nmc("a").done(),
                TestRack.nmc("b").done(),
                TestRack.nmc("c").done());
        assertThat(rack.host.identity().channels().get(0).can(Ability.LOAD_SWITCH))
                .isTrue();
        assertThat(rack.host.identity().channels().get(1).can(Ability.LOAD_SWITCH))
                .isFalse();
        assertThat(rack.host.identity().channels().get(0).loadMilliohms()).isEqualTo(20_000);
        rack.host.tell(rack.board, new SetLoad(0, true));
        rack.run(5);

        double sum = rack.host.volts(0) + rack.host.volts(1) + rack.host.volts(2);
        assertThat(rack.host.amperes(0)).isCloseTo(sum / 20, within(0.002));
        assertThat(rack.board.truth(2).amperes()).isCloseTo(sum / 20, within(0.002));
        assertThat(rack.host.reading(0).is(Reading.LOAD_APPLIED)).isTrue();
        assertThat(rack.board.truth(1).loadApplied()).isTrue();
    }

    @Test
    void the_weakest_cell_is_driven_negative_by_the_others() {
        TestRack rack = string(
                TestRack.nmc("a").done(),
                TestRack.nmc("weak").stateOfCharge(0.02).done(),
                TestRack.nmc("c").done());
        rack.host.tell(rack.board, new SetLoad(0, true));
        double lowest = 5;
        for (int i = 0; i < 900; i++) {
            rack.run(1);
            lowest = Math.min(lowest, rack.host.volts(1));
        }
        assertThat(lowest).isLessThan(-0.02);
        assertThat(rack.host.volts(0)).isGreaterThan(3);
        assertThat(rack.board.truth(1).stateOfCharge()).isLessThan(-0.03);
    }

    @Test
    void a_cell_put_in_the_wrong_way_round_takes_from_the_others_voltage() {
        TestRack rack = string(
                TestRack.nmc("a").done(),
                TestRack.nmc("turned").reversed().done(),
                TestRack.nmc("c").done());
        rack.host.tell(rack.board, new SetLoad(0, true));
        rack.run(5);

        assertThat(rack.board.truth(0).amperes()).isCloseTo(3.65 / 20, within(0.01));
        assertThat(rack.board.truth(1).amperes()).isNegative();
        assertThat(rack.host.reading(1).is(Reading.VOLTS_AT_RAIL)).isTrue();
    }

    @Test
    void one_tripped_protection_board_stops_the_whole_string() {
        TestRack rack = string(
                TestRack.nmc("a").done(),
                TestRack.nmc("guarded").stateOfCharge(0.03).protectionBoard(2.5).done(),
                TestRack.nmc("c").done());
        rack.host.tell(rack.board, new SetLoad(0, true));
        rack.run(900);

        assertThat(rack.board.truth(0).amperes()).isZero();
        assertThat(rack.host.volts(1)).isCloseTo(0, within(0.01));
        assertThat(rack.board.truth(1).openCircuitVolts()).isGreaterThan(2.4);
    }

    @Test
    void a_sense_lead_that_falls_off_leaves_the_string_running() {
        TestRack rack = string(
                TestRack.nmc("a").done(),
                TestRack.nmc("b").done(),
                TestRack.nmc("c").done(),
                Fault.on(1, FaultKind.OPEN_LEAD, Trigger.at(3_000)).with(Map.of("floatVolts", 0.0)));
        rack.host.tell(rack.board, new SetLoad(0, true));
        rack.run(60);

        assertThat(rack.host.volts(1)).isBetween(-0.5, 0.8);
        assertThat(rack.board.truth(1).amperes()).isGreaterThan(0.4);
    }

    @Test
    void a_bonded_member_is_bridged() {
        TestRack rack = string(
                TestRack.nmc("a").done(),
                TestRack.nmc("b").stateOfCharge(-0.034).done(),
                TestRack.nmc("c").done());
        rack.board.bond(1);
        rack.host.tell(rack.board, new SetLoad(2, true));
        rack.board.handLoad(0, true);
        rack.run(5);

        assertThat(rack.board.truth(0).amperes()).isCloseTo(2 * 3.65 / 20, within(0.02));
        assertThat(Math.abs(rack.board.truth(1).amperes())).isLessThan(0.1);
    }
}
