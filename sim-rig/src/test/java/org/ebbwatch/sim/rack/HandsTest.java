package org.ebbwatch.sim.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Trigger;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** What a person does at a rack, and the container that cells are watched in. */
class HandsTest {
    private static final int AMBIENT = 1;
    private static final int DUMMY = 2;

    @Nested
    class What_a_person_does {
        private final TestRack rack =
                new TestRack(TestRack.board(ChannelSpec.byHand(TestRack.nmc("a").done(), 10), ChannelSpec.empty(0))
                        .thermometers(true, true, 1, true)
                        .done());

        @Test
        void a_load_put_on_by_hand_sags_the_cell_without_a_bit() {
            rack.run(2);
            double open = rack.host.volts(0);
            rack.board.handLoad(0, true);
            rack.run(2);

            assertThat(open - rack.host.volts(0)).isGreaterThan(0.015);
            assertThat(rack.host.reading(0).is(Reading.LOAD_APPLIED)).isFalse();
            assertThat(rack.board.truth(0).loadApplied()).isTrue();
        }

        @Test
        void a_bond_reads_nothing_though_the_cell_is_half_full() {
            rack.board.bond(0);
            rack.run(1);
            assertThat(rack.board.truth(0).amperes()).isGreaterThan(20);
            rack.run(1200);

            assertThat(rack.host.volts(0)).isLessThan(0.1);
            assertThat(rack.board.truth(0).bonded()).isTrue();
            assertThat(rack.board.truth(0).celsius()).isGreaterThan(60);
        }

        @Test
        void a_parted_bond_lets_the_voltage_come_back() {
            TestRack slow = new TestRack(TestRack.board(ChannelSpec.byHand(
                            TestRack.nmc("a").diffusion().ohms(0.3).done(), 10))
                    .done());
            slow.board.bond(0);
            slow.run(60);
            slow.board.part(0);
            slow.run(600);

            assertThat(slow.host.volts(0)).isGreaterThan(3.0);
            assertThat(slow.board.truth(0).bonded()).isFalse();
        }

        @Test
        void a_cell_moves_to_a_watch_place_as_it_is() {
            rack.run(10);
            int watch = 4;
            rack.board.move(0, watch);
            rack.run(10);

            assertThat(rack.board.truth(0).isOccupied()).isFalse();
            assertThat(rack.board.truth(watch).tag()).isEqualTo("a");
            assertThat(rack.board.truth(watch).contained()).isTrue();
            assertThat(rack.host.reading(watch).state()).isEqualTo(Reading.CELSIUS_VALID);
        }

        @Test
        void a_held_sensor_rises() {
            rack.run(30);
            double before = rack.host.celsius(0);
            rack.board.hold(0, 30);
            rack.run(30);
            assertThat(rack.host.celsius(0) - before).isGreaterThan(4);
            rack.run(120);
            assertThat(rack.host.celsius(0) - before).isLessThan(0.3);
        }

        @Test
        void cells_change_places_with_their_bonds() {
            rack.board.bond(0);
            rack.board.swap(0, 1);

            assertThat(rack.board.truth(1).tag()).isEqualTo("a");
            assertThat(rack.board.truth(1).bonded()).isTrue();
            assertThat(rack.board.truth(0).isOccupied()).isFalse();
        }

        @Test
        void insulation_and_container_are_remembered() {
            rack.board.bond(0);
            rack.board.insulate(0);
            rack.board.contain(0, true);

            assertThat(rack.board.truth(0).insulated()).isTrue();
            assertThat(rack.board.truth(0).contained()).isTrue();
        }

        @Test
        void what_cannot_be_done_is_refused() {
            assertThatThrownBy(() -> rack.board.takeOff(1)).hasMessage("channel 1 holds no cell");
            assertThatThrownBy(() -> rack.board.bond(99)).hasMessage("channel is 99, allowed is 0 to 5");
            assertThatThrownBy(() -> rack.board.putOn(0, TestRack.nmc("b").done()))
                    .hasMessage("channel 0 already holds a cell");
            assertThatThrownBy(() -> rack.board.putOn(2, TestRack.nmc("b").done()))
                    .hasMessage("channel 2 of role AMBIENT holds no cell");
        }

        @Test
        void a_new_cell_reads_its_voltage() {
            rack.board.takeOff(0);
            rack.run(5);
            rack.board.putOn(0, TestRack.lfp("b").done());
            rack.run(2);

            assertThat(rack.host.volts(0)).isCloseTo(rack.board.truth(0).openCircuitVolts(), within(0.005));
        }
    }

    @Nested
    class The_watch_container {
        @Test
        void follows_the_room_slowly_and_its_dummy_follows_it() {
            Fault rise = Fault.onBoard(FaultKind.AMBIENT_RISE, Trigger.at(60_000))
                    .with(Map.of("kelvin", 10.0, "tauMinutes", 1.0));
            TestRack rack = TestRack.with(rise);
            rack.run(1200);
            double early = rack.host.celsius(DUMMY);
            rack.run(6 * 3600);

            assertThat(rack.host.celsius(AMBIENT)).isCloseTo(31, within(0.7));
            assertThat(early).isLessThan(27);
            assertThat(rack.host.celsius(DUMMY)).isCloseTo(31, within(0.8));
        }

        @Test
        void a_cell_that_makes_heat_is_warmer_than_the_dummy() {
            TestRack rack = TestRack.with(Fault.on(0, FaultKind.WARMING, Trigger.at(1_000)));
            rack.board.contain(0, true);
            rack.run(4 * 3600);

            assertThat(rack.host.celsius(0) - rack.host.celsius(DUMMY)).isBetween(5.0, 15.0);
            assertThat(rack.host.celsius(DUMMY)).isGreaterThan(21.2);
        }
    }
}
