package org.ebbwatch.sim.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.SetLoad;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Happening;
import org.ebbwatch.sim.fault.Trigger;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.ebbwatch.sim.scenario.ConverterSpec;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Each fault of a cell, its leads and its load: what is true, and what the readings make of it. */
class CellFaultsTest {
    private static final Trigger SOON = Trigger.at(30_000);

    private static TestRack loaded(Fault... faults) {
        TestRack rack = TestRack.with(faults);
        rack.host.tell(rack.board, new SetLoad(0, true));
        return rack;
    }

    @Nested
    class A_protection_board {
        private TestRack guarded() {
            TestRack rack = new TestRack(TestRack.one(TestRack.nmc("a")
                            .stateOfCharge(0.03)
                            .protectionBoard(2.5)
                            .done())
                    .measuresAmperes(true)
                    .done());
            rack.host.tell(rack.board, new SetLoad(0, true));
            return rack;
        }

        @Test
        void collapses_from_its_cut_off_to_nothing_within_one_scan() {
            TestRack rack = guarded();
            double last = 5;
            rack.run(1);
            while (rack.host.volts(0) > 0.3) {
                last = rack.host.volts(0);
                rack.run(1);
            }
            assertThat(last).isBetween(2.4, 2.6);
            assertThat(rack.host.volts(0)).isCloseTo(0, within(0.01));
            assertThat(rack.host.amperes(0)).isCloseTo(0, within(0.001));
            rack.run(600);
            assertThat(rack.host.volts(0)).isCloseTo(0, within(0.01));
            assertThat(rack.board.truth(0).openCircuitVolts()).isGreaterThan(2.4);
            assertThat(rack.board.truth(0).restedVoltsAfter24h()).isGreaterThan(2.4);
        }

        @Test
        void does_not_close_when_the_load_is_taken_off() {
            TestRack rack = guarded();
            rack.run(3_600);
            rack.host.tell(rack.board, new SetLoad(0, false));
            rack.run(3_600);

            assertThat(rack.host.volts(0)).isCloseTo(0, within(0.02));
        }

        @Test
        void closes_on_charging() {
            TestRack rack = guarded();
            rack.run(3_600);
            rack.host.tell(rack.board, new SetLoad(0, false));
            rack.board.addFault(Fault.on(0, FaultKind.CHARGER_LEAK, Trigger.at(rack.board.eventMillis() + 1_000))
                    .with(Map.of("volts", 3.6, "ohms", 5.0)));
            rack.run(10);

            assertThat(rack.host.volts(0)).isGreaterThan(2.5);
            assertThat(rack.board.truth(0).amperes()).isNegative();
        }

        @Test
        void opens_when_the_leads_are_bonded_on_a_full_cell() {
            TestRack rack = new TestRack(
                    TestRack.one(TestRack.nmc("a").protectionBoard(2.5).done()).done());
            rack.board.bond(0);
            rack.run(5);
            rack.board.part(0);
            rack.run(5);

            assertThat(rack.host.volts(0)).isCloseTo(0, within(0.02));
            assertThat(rack.board.truth(0).openCircuitVolts()).isGreaterThan(3.6);
        }

        @Test
        void trips_when_the_script_says_so() {
            TestRack rack = loaded(Fault.on(0, FaultKind.PROTECTION_CUT_OFF, SOON));
            rack.run(29);
            assertThat(rack.host.volts(0)).isGreaterThan(3.5);
            rack.run(1);
            assertThat(rack.suffers(0, FaultKind.PROTECTION_CUT_OFF)).isTrue();
            assertThat(rack.host.volts(0)).isCloseTo(0, within(0.01));
            assertThat(rack.board.truth(0).openCircuitVolts()).isGreaterThan(3.6);
        }
    }

    @Nested
    class A_lead_that_falls_off {
        private double lowest;
        private double highest;

        private void watch(TestRack rack) {
            lowest = 9;
            highest = -9;
            for (int i = 0; i < 1_200; i++) {
                rack.run(1);
                lowest = Math.min(lowest, rack.host.volts(0));
                highest = Math.max(highest, rack.host.volts(0));
            }
        }

        @ParameterizedTest
        @ValueSource(booleans = {false, true})
        void lets_the_input_drift(boolean unipolar) {
            TestRack rack = new TestRack(TestRack.one(TestRack.nmc("a").done())
                    .converter(unipolar ? ConverterSpec.USUAL.asUnipolar() : ConverterSpec.USUAL)
                    .faults(List.of(Fault.on(0, FaultKind.OPEN_LEAD, SOON)))
                    .done());
            rack.run(30);
            watch(rack);

            assertThat(rack.board.truth(0).attached()).isFalse();
            assertThat(rack.board.truth(0).openCircuitVolts()).isGreaterThan(3.6);
            assertThat(highest - lowest).isGreaterThan(0.2);
            assertThat(highest).isBetween(0.3, 1.0);
            assertThat(lowest).isBetween(unipolar ? 0 : -0.5, 0.2);
        }

        @Test
        void reads_0_with_a_resistor_across_the_input_exactly_like_success() {
            TestRack rack = loaded(Fault.on(0, FaultKind.OPEN_LEAD, SOON).with(Map.of("resistorAcross", 1.0)));
            rack.run(30);
            watch(rack);

            assertThat(lowest).isGreaterThan(-0.002);
            assertThat(highest).isLessThan(0.002);
            assertThat(rack.board.truth(0).amperes()).isZero();
        }

        @Test
        void reads_0_while_the_load_lies_across_the_input_and_drifts_once_it_is_opened() {
            TestRack rack = loaded(Fault.on(0, FaultKind.OPEN_LEAD, SOON));
            rack.run(60);
            assertThat(rack.host.volts(0)).isCloseTo(0, within(0.002));
            rack.host.tell(rack.board, new SetLoad(0, false));
            watch(rack);
            assertThat(highest - lowest).isGreaterThan(0.2);
        }

        @Test
        void drains_on_when_only_the_sense_lead_is_off() {
            TestRack rack = loaded(Fault.on(0, FaultKind.OPEN_SENSE, SOON));
            rack.run(60);

            assertThat(rack.host.volts(0)).isLessThan(1);
            assertThat(rack.board.truth(0).amperes()).isGreaterThan(0.3);
        }

        @Test
        void is_as_it_was_when_put_back() {
            TestRack rack = loaded(Fault.on(0, FaultKind.OPEN_LEAD, SOON).lasting(60_000));
            rack.run(120);

            assertThat(rack.host.volts(0)).isGreaterThan(3.5);
            assertThat(rack.board.truth(0).activeFaults()).isEmpty();
        }
    }

    @Nested
    class A_load {
        @Test
        void that_is_lost_lets_the_cell_recover_while_the_bit_stays() {
            TestRack rack = loaded(Fault.on(0, FaultKind.LOAD_LOST, Trigger.after(Happening.LOAD_CLOSED, 60_000)));
            rack.run(59);
            double loadedVolts = rack.host.volts(0);
            rack.run(30);

            assertThat(rack.host.volts(0) - loadedVolts).isGreaterThan(0.015);
            assertThat(rack.host.amperes(0)).isCloseTo(0, within(0.001));
            assertThat(rack.host.reading(0).is(Reading.LOAD_APPLIED)).isTrue();
            assertThat(rack.board.truth(0).loadApplied()).isFalse();
            assertThat(rack.suffers(0, FaultKind.LOAD_LOST)).isTrue();
        }

        @Test
        void that_is_stuck_drains_on_though_the_bit_is_off() {
            TestRack rack = loaded(Fault.on(0, FaultKind.LOAD_STUCK, SOON));
            rack.run(60);
            rack.host.tell(rack.board, new SetLoad(0, false));
            double before = rack.host.volts(0);
            rack.run(60);

            assertThat(rack.host.volts(0)).isLessThan(before + 0.002);
            assertThat(rack.host.reading(0).is(Reading.LOAD_APPLIED)).isFalse();
            assertThat(rack.board.truth(0).loadApplied()).isTrue();
        }

        @Test
        void that_is_far_too_high_leaves_the_voltage_hanging() {
            TestRack rack = new TestRack(
                    TestRack.one(TestRack.nmc("a").stateOfCharge(0).done())
                            .faults(List.of(Fault.on(0, FaultKind.WRONG_LOAD, Trigger.at(0))
                                    .with(Map.of("factor", 1000.0))))
                            .done(),
                    10_000);
            rack.host.tell(rack.board, new SetLoad(0, true));
            rack.run(600);
            assertStalls(rack);
        }

        @Test
        void a_charger_that_leaks_keeps_the_voltage_up() {
            TestRack rack = new TestRack(
                    TestRack.one(TestRack.nmc("a").stateOfCharge(0.002).done())
                            .faults(List.of(Fault.on(0, FaultKind.CHARGER_LEAK, Trigger.at(0))
                                    .with(Map.of("volts", 2.4, "ohms", 0.5))))
                            .done(),
                    10_000);
            rack.host.tell(rack.board, new SetLoad(0, true));
            rack.run(4 * 3600);
            assertStalls(rack);
        }

        /** Below 2.5 V: 5 % of rated charge by nominal load and time, with a fall of less than 3 U. */
        private void assertStalls(TestRack rack) {
            double before = rack.host.volts(0);
            assertThat(before).isBetween(1.5, 2.6);
            double counted = 0;
            double lowest = before;
            while (counted < 0.05 * 2.6) {
                rack.run(60);
                counted += rack.host.volts(0) / TestRack.LOAD_OHMS * 60 / 3600;
                lowest = Math.min(lowest, rack.host.volts(0));
            }
            double expandedVolts = 400e-6 + 500e-6 * before;
            assertThat(before - lowest).isLessThan(3 * expandedVolts);
        }
    }

    @Nested
    class Heat {
        @ParameterizedTest
        @ValueSource(strings = {"drain", "rest", "tie-off"})
        void warms_a_cell_in_any_phase(String phase) {
            TestRack rack = TestRack.with(Fault.on(0, FaultKind.WARMING, SOON));
            if (phase.equals("drain")) {
                rack.host.tell(rack.board, new SetLoad(0, true));
            } else if (phase.equals("tie-off")) {
                rack.board.takeOff(0);
                rack.board.putOn(0, TestRack.nmc("b").stateOfCharge(-0.034).done());
                rack.board.bond(0);
            }
            rack.run(3 * 3600);

            assertThat(rack.host.celsius(0)).isBetween(28.0, 45.0);
            assertThat(rack.board.truth(0).celsius()).isBetween(28.0, 45.0);
        }

        @Test
        void can_run_away() {
            TestRack rack = TestRack.with(Fault.on(0, FaultKind.RUNAWAY, SOON));
            double fastest = 0;
            double hottest = 0;
            for (int i = 0; i < 400; i++) {
                double before = rack.board.truth(0).celsius();
                rack.run(1);
                double now = rack.board.truth(0).celsius();
                fastest = Math.max(fastest, now - before);
                hottest = Math.max(hottest, now);
            }
            assertThat(fastest).isGreaterThan(5);
            assertThat(hottest).isGreaterThan(250);
            assertThat(rack.host.reading(0).is(Reading.CELSIUS_AT_RAIL)).isTrue();
            assertThat(rack.host.volts(0)).isLessThan(1);
        }

        @Test
        void comes_from_an_internal_short_that_develops() {
            TestRack rack = TestRack.with(Fault.on(0, FaultKind.INTERNAL_SHORT, SOON));
            rack.run(1_800);
            double early = rack.board.truth(0).celsius();
            rack.run(3 * 3600);

            assertThat(early).isLessThan(23);
            assertThat(rack.board.truth(0).celsius()).isGreaterThan(40);
            assertThat(rack.board.truth(0).stateOfCharge()).isLessThan(0.1);
        }
    }

    @Nested
    class What_changes_hands {
        @Test
        void a_bond_that_comes_loose_shows_what_the_cell_still_has() {
            TestRack rack = new TestRack(
                    TestRack.one(TestRack.nmc("a").diffusion().ohms(0.3).done())
                            .faults(List.of(Fault.on(0, FaultKind.LOOSE_TIE, Trigger.after(Happening.BONDED, 60_000))))
                            .done());
            rack.board.bond(0);
            rack.run(58);
            assertThat(rack.host.volts(0)).isLessThan(0.2);
            rack.run(30);

            assertThat(rack.board.truth(0).bonded()).isFalse();
            assertThat(rack.host.volts(0)).isGreaterThan(1);
        }

        @Test
        void a_cell_put_back_the_wrong_way_round_reads_negative() {
            TestRack rack = TestRack.with(Fault.on(0, FaultKind.REVERSED, SOON));
            rack.run(31);

            assertThat(rack.host.volts(0)).isEqualTo(-0.5);
            assertThat(rack.board.truth(0).reversed()).isTrue();
        }

        @Test
        void cells_are_swapped_while_the_board_is_silent() {
            TestRack rack = new TestRack(TestRack.board(
                            ChannelSpec.switched(TestRack.nmc("a").done(), 10),
                            ChannelSpec.switched(
                                    TestRack.lfp("b").stateOfCharge(0.02).done(), 10))
                    .faults(List.of(
                            Fault.onBoard(FaultKind.SILENT, Trigger.at(10_000)).lasting(20_000),
                            Fault.on(0, FaultKind.SWAPPED, Trigger.at(20_000)).with(Map.of("with", 1.0))))
                    .done());
            rack.run(9);
            double before = rack.host.volts(0);
            for (int i = 0; i < 25; i++) {
                rack.board.step();
            }
            rack.host.hear(rack.board);

            assertThat(before - rack.host.volts(0)).isGreaterThan(1);
            assertThat(rack.board.truth(0).tag()).isEqualTo("b");
            assertThat(rack.board.truth(1).tag()).isEqualTo("a");
        }
    }
}
