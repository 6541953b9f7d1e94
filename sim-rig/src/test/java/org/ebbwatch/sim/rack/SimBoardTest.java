package org.ebbwatch.sim.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.Optional;
import java.util.zip.CRC32;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.SetInterval;
import org.ebbwatch.rig.message.SetLoad;
import org.ebbwatch.rig.wire.FrameEncoder;
import org.ebbwatch.sim.TestHost;
import org.ebbwatch.sim.cell.Arrival;
import org.ebbwatch.sim.scenario.AmbientSpec;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.ebbwatch.sim.scenario.ConverterSpec;
import org.ebbwatch.sim.scenario.Scenario;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class SimBoardTest {
    private static final int AMBIENT = 1;
    private static final int BANK = 3;

    @Nested
    class Determinism {
        private byte[] bytesOf(long seed) throws Exception {
            Scenario scenario = Scenario.parse(
                    """
                    interval: 2s
                    boards:
                      - serialNumber: SIM-A
                        measuresAmperes: true
                        faults:
                          - {kind: corruptBytes, at: 20min, perMillion: 500}
                          - {kind: openLead, channel: 3, at: 10min}
                    """,
                    "twice.yaml");
            SimBoard board = new SimBoard(scenario.boards().get(0), seed, 1, scenario.intervalMillis());
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            TestHost host = new TestHost();
            for (int i = 0; i < 2_000; i++) {
                if (i == 5) {
                    for (int channel = 0; channel < 16; channel++) {
                        byte[] frame = host.frame(new SetLoad(channel, true));
                        board.receive(frame, 0, frame.length);
                    }
                }
                board.step();
                bytes.writeBytes(board.takeOutput());
            }
            return bytes.toByteArray();
        }

        @Test
        void the_same_seed_gives_the_same_bytes() throws Exception {
            byte[] bytes = bytesOf(11);

            assertThat(bytes).hasSizeGreaterThan(300_000).isEqualTo(bytesOf(11));
        }

        @Test
        void another_seed_gives_other_bytes() throws Exception {
            assertThat(bytesOf(11)).isNotEqualTo(bytesOf(12));
        }

        /** Bytes of this release: a change here is a change of the physics or of a random stream, and belongs in the change log. */
        @Test
        void the_bytes_are_those_of_every_machine() throws Exception {
            CRC32 crc = new CRC32();
            crc.update(bytesOf(11));

            assertThat(Long.toHexString(crc.getValue())).isEqualTo("75fac570");
        }
    }

    @Nested
    class Introducing_itself {
        @Test
        void it_first_ends_whatever_stood_on_the_line() {
            SimBoard board = new SimBoard(TestRack.one(TestRack.nmc("a").done()).done(), 1, 1, 1_000);
            byte[] bytes = board.takeOutput();

            assertThat(bytes[0]).isZero();
            assertThat(bytes[1]).isNotZero();
        }

        @Test
        void it_claims_no_lead_check_where_a_load_is_put_on_by_hand() {
            TestRack rack = new TestRack(
                    TestRack.board(ChannelSpec.byHand(TestRack.nmc("a").done(), 10))
                            .done());

            assertThat(rack.host.identity().channels().get(0).can(Ability.LEAD_CHECK))
                    .isFalse();
        }

        @Test
        void it_says_what_it_is_and_can_do() {
            TestRack rack = new TestRack(TestRack.one(TestRack.nmc("a").done()).done());
            Identity identity = rack.host.identity();

            assertThat(identity.simulated()).isTrue();
            assertThat(identity.serialNumber()).isEqualTo("SIM-T");
            assertThat(identity.speed()).isEqualTo(1);
            assertThat(identity.intervalMillis()).isEqualTo(1_000);
            assertThat(identity.hostTimeoutMillis()).isEqualTo(30_000);
            assertThat(identity.channels())
                    .extracting(channel -> channel.role())
                    .containsExactly(ChannelRole.CELL, ChannelRole.AMBIENT, ChannelRole.DUMMY, ChannelRole.BANK);
            assertThat(identity.channels().get(0).loadMilliohms()).isEqualTo(10_000);
            assertThat(identity.channels().get(0).abilities())
                    .containsExactly(
                            Ability.VOLTS, Ability.CELSIUS, Ability.LOAD_SWITCH, Ability.LEAD_CHECK, Ability.BLINK);
            assertThat(identity.channels().get(BANK).can(Ability.VOLTS)).isFalse();
        }

        @Test
        void an_accelerated_board_waits_at_least_2_s_of_host_time_for_its_host() {
            SimBoard board = new SimBoard(TestRack.one(TestRack.nmc("a").done()).done(), 1, 600, 1_000);

            assertThat(board.identity().hostTimeoutMillis()).isEqualTo(1_200_000);
        }
    }

    @Test
    void a_scan_s_bytes_are_those_of_the_general_encoder() {
        for (boolean amperes : new boolean[] {false, true}) {
            SimBoard board = new SimBoard(
                    TestRack.one(TestRack.nmc("a").done())
                            .measuresAmperes(amperes)
                            .done(),
                    1,
                    1,
                    1_000);
            TestHost host = new TestHost();
            host.hear(board);
            for (int i = 0; i < 300; i++) {
                board.step();
                byte[] bytes = board.takeOutput();
                host.hear(bytes, bytes.length);
                assertThat(bytes).isEqualTo(FrameEncoder.encode(host.lastReadings(), (i + 1) & 0xFFFF));
            }
            assertThat(host.decoder().sequenceGaps()).isZero();
        }
    }

    @Nested
    class A_cell_on_its_load {
        @Test
        void reads_its_voltage_within_the_stated_uncertainty() {
            TestRack rack = new TestRack(TestRack.one(TestRack.nmc("a").done()).done());
            rack.run(5);
            double truth = rack.board.truth(0).openCircuitVolts();
            double stated = 400e-6 + 500e-6 * truth;

            assertThat(rack.host.volts(0)).isCloseTo(truth, within(2 * stated));
            assertThat(rack.host.reading(0).state()).isEqualTo(Reading.VOLTS_VALID | Reading.CELSIUS_VALID);
            assertThat(rack.host.celsius(0)).isCloseTo(21, within(0.7));
        }

        @Test
        void sags_and_recovers_with_the_switch_and_says_so() {
            TestRack rack = new TestRack(
                    TestRack.one(TestRack.nmc("a").done()).measuresAmperes(true).done());
            rack.run(5);
            double open = rack.host.volts(0);
            rack.host.tell(rack.board, new SetLoad(0, true));
            rack.run(2);

            assertThat(open - rack.host.volts(0)).isGreaterThan(0.015);
            assertThat(rack.host.reading(0).is(Reading.LOAD_APPLIED)).isTrue();
            assertThat(rack.host.amperes(0)).isCloseTo(rack.host.volts(0) / 10.06, within(0.005));
            assertThat(rack.board.truth(0).loadApplied()).isTrue();
            rack.host.tell(rack.board, new SetLoad(0, false));
            rack.run(60);
            assertThat(open - rack.host.volts(0)).isLessThan(0.005);
            assertThat(rack.host.reading(0).is(Reading.LOAD_APPLIED)).isFalse();
        }

        @Test
        void loses_the_leads_drop_where_only_two_wires_go_to_it() {
            ChannelSpec two = new ChannelSpec(
                    ChannelRole.CELL, Optional.of(TestRack.nmc("a").done()), 10, 0, 0.5, true, false, false);
            TestRack rack = new TestRack(TestRack.board(two).done());
            rack.host.tell(rack.board, new SetLoad(0, true));
            rack.run(10);

            assertThat(rack.host.volts(0)).isCloseTo(rack.board.truth(0).amperes() * 10, within(0.005));
        }

        @Test
        void warms_the_resistor_bank() {
            TestRack rack = new TestRack(TestRack.one(TestRack.nmc("a").done()).done());
            rack.run(10);
            double cold = rack.host.celsius(BANK);
            rack.host.tell(rack.board, new SetLoad(0, true));
            rack.run(1800);

            assertThat(rack.host.celsius(BANK) - cold).isBetween(0.5, 1.5);
        }
    }

    @Test
    void readings_are_noisy_by_about_what_the_converter_says() {
        TestRack rack = new TestRack(TestRack.one(TestRack.nmc("a").done()).done());
        double volts = 0;
        double celsius = 0;
        int scans = 2_000;
        int lastVolts = 0;
        int lastCelsius = 0;
        for (int i = 0; i < scans; i++) {
            rack.run(1);
            Reading reading = rack.host.reading(0);
            if (i > 0) {
                volts += Math.pow(reading.volts() - lastVolts, 2);
                celsius += Math.pow(reading.celsius() - lastCelsius, 2);
            }
            lastVolts = reading.volts();
            lastCelsius = reading.celsius();
        }
        assertThat(Math.sqrt(volts / 2 / scans)).isCloseTo(1.04, within(0.1));
        assertThat(Math.sqrt(celsius / 2 / scans)).isCloseTo(1.53, within(0.12));
    }

    @Nested
    class The_range_of_the_converter {
        @Test
        void a_bipolar_converter_shows_a_reversed_cell_and_its_rail() {
            TestRack rack = new TestRack(
                    TestRack.one(TestRack.nmc("a").reversed().done()).done());
            rack.run(2);

            assertThat(rack.host.volts(0)).isEqualTo(-0.5);
            assertThat(rack.host.reading(0).is(Reading.VOLTS_AT_RAIL)).isTrue();
            assertThat(rack.board.truth(0).reversed()).isTrue();
            assertThat(rack.board.truth(0).openCircuitVolts()).isGreaterThan(3.6);
        }

        @Test
        void a_unipolar_converter_reads_a_reversed_cell_as_0_like_any_empty_one() {
            TestRack rack =
                    new TestRack(TestRack.one(TestRack.nmc("a").reversed().done())
                            .converter(ConverterSpec.USUAL.asUnipolar())
                            .done());
            rack.run(2);

            assertThat(rack.host.volts(0)).isZero();
            assertThat(rack.host.reading(0).state())
                    .isEqualTo(Reading.VOLTS_VALID | Reading.VOLTS_AT_RAIL | Reading.CELSIUS_VALID);
        }
    }

    @Test
    void the_room_swings_with_the_day_and_the_cells_follow() {
        BoardSpec spec = BoardSpec.build(
                        "SIM-T", List.of(ChannelSpec.switched(TestRack.nmc("a").done(), 10)))
                .ambient(new AmbientSpec(20, 8, 3))
                .done();
        TestRack rack = new TestRack(spec, 10_000);
        rack.run(60);
        assertThat(rack.host.celsius(AMBIENT)).isCloseTo(16, within(0.7));
        rack.run(12 * 3600);
        assertThat(rack.host.celsius(AMBIENT)).isCloseTo(24, within(0.7));
        assertThat(rack.host.celsius(0)).isBetween(22.5, 24.5);
    }

    @Test
    void capacities_spread_by_seed_and_tag() {
        BoardSpec spec = BoardSpec.build(
                        "SIM-T",
                        List.of(
                                ChannelSpec.switched(
                                        TestRack.nmc("a").spread(0.1).done(), 10),
                                ChannelSpec.switched(
                                        TestRack.nmc("b").spread(0.1).done(), 10)))
                .done();
        TestRack rack = new TestRack(spec, 10_000);
        rack.board.handLoad(0, true);
        rack.board.handLoad(1, true);
        rack.run(3600);

        assertThat(rack.board.truth(0).stateOfCharge())
                .isNotCloseTo(rack.board.truth(1).stateOfCharge(), within(0.001));
    }

    @Test
    void cells_that_arrive_dead_or_disconnected_read_0_and_differ_in_truth() {
        BoardSpec spec = TestRack.board(
                        ChannelSpec.switched(
                                TestRack.nmc("dead").arrival(Arrival.DEAD).done(), 10),
                        ChannelSpec.switched(
                                TestRack.nmc("open")
                                        .arrival(Arrival.DISCONNECTED)
                                        .done(),
                                10))
                .done();
        TestRack rack = new TestRack(spec);
        rack.run(5);

        assertThat(rack.host.volts(0)).isCloseTo(0, within(0.12));
        assertThat(rack.board.truth(0).restedVoltsAfter24h()).isLessThan(0);
        assertThat(rack.host.volts(1)).isCloseTo(0, within(0.01));
        assertThat(rack.board.truth(1).openCircuitVolts()).isGreaterThan(3.6);
    }

    @Test
    void a_longer_interval_takes_effect_with_the_next_step() {
        TestRack rack = new TestRack(TestRack.one(TestRack.nmc("a").done()).done());
        rack.run(1);
        rack.host.tell(rack.board, new SetInterval(60_000));

        assertThat(rack.board.step()).isEqualTo(61_000);
        rack.host.hear(rack.board);
        assertThat(rack.host.lastReadings().boardMillis()).isEqualTo(61_000);
        assertThat(rack.host.lastReadings().scan()).isEqualTo(2);
    }
}
