package org.ebbwatch.sim.rack;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.zip.CRC32C;
import org.ebbwatch.rig.message.Blink;
import org.ebbwatch.rig.message.Buzzer;
import org.ebbwatch.rig.message.CheckLead;
import org.ebbwatch.rig.message.Done;
import org.ebbwatch.rig.message.HostAlive;
import org.ebbwatch.rig.message.HostMessage;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Kind;
import org.ebbwatch.rig.message.LeadChecked;
import org.ebbwatch.rig.message.LeadOutcome;
import org.ebbwatch.rig.message.OpenAllLoads;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.RefusalReason;
import org.ebbwatch.rig.message.Refused;
import org.ebbwatch.rig.message.SetInterval;
import org.ebbwatch.rig.message.SetLoad;
import org.ebbwatch.rig.message.Who;
import org.ebbwatch.rig.wire.Cobs;
import org.ebbwatch.rig.wire.FrameEncoder;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Trigger;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.ebbwatch.sim.scenario.ConverterSpec;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class HostDeskTest {
    private final TestRack rack = new TestRack(TestRack.board(
                    ChannelSpec.switched(TestRack.nmc("a").done(), 10),
                    ChannelSpec.byHand(TestRack.nmc("b").done(), 10))
            .done());

    private void assertRefused(HostMessage request, int channel, RefusalReason reason) {
        int sequence = rack.host.tell(rack.board, request);

        assertThat(rack.host.last(Refused.class))
                .isEqualTo(new Refused(sequence, request.kind().code(), channel, reason));
    }

    private void assertDone(HostMessage request) {
        int sequence = rack.host.tell(rack.board, request);

        assertThat(rack.host.last(Done.class))
                .isEqualTo(new Done(sequence, request.kind().code()));
    }

    @Test
    void WHO_is_answered_by_IDENTITY() {
        rack.host.messages().clear();
        rack.host.tell(rack.board, new Who());

        assertThat(rack.host.last(Identity.class)).isEqualTo(rack.board.identity());
    }

    @Nested
    class SET_LOAD {
        @Test
        void closes_and_opens() {
            assertDone(new SetLoad(0, true));
            rack.run(1);
            assertThat(rack.host.reading(0).is(Reading.LOAD_APPLIED)).isTrue();
            assertDone(new SetLoad(0, false));
            rack.run(1);
            assertThat(rack.host.reading(0).is(Reading.LOAD_APPLIED)).isFalse();
        }

        @Test
        void is_refused_where_there_is_no_channel_or_no_switch() {
            assertRefused(new SetLoad(40, true), 40, RefusalReason.NO_SUCH_CHANNEL);
            assertRefused(new SetLoad(1, true), 1, RefusalReason.NO_SUCH_ABILITY);
        }

        @Test
        void is_refused_while_bonded() {
            rack.board.bond(0);

            assertRefused(new SetLoad(0, true), 0, RefusalReason.WHILE_BONDED);
            assertThat(rack.board.truth(0).loadApplied()).isFalse();
        }

        @Test
        void is_refused_on_a_hot_cell_but_may_open() {
            rack.board.addFault(Fault.on(0, FaultKind.ABSURD_CELSIUS, Trigger.at(0)));
            rack.run(1);

            assertRefused(new SetLoad(0, true), 0, RefusalReason.OVER_TEMPERATURE);
            assertDone(new SetLoad(0, false));
        }
    }

    @Nested
    class A_lost_host {
        @Test
        void opens_every_load_after_the_timeout() {
            assertDone(new SetLoad(0, true));
            rack.run(5);
            for (int i = 0; i < 30; i++) {
                rack.board.step();
            }
            assertThat(rack.board.truth(0).loadApplied()).isTrue();
            rack.board.step();
            assertThat(rack.board.truth(0).loadApplied()).isFalse();
            assertThat(rack.board.isHostLost()).isTrue();
        }

        @Test
        void may_close_none_until_it_is_heard_again() {
            rack.run(1);
            for (int i = 0; i < 31; i++) {
                rack.board.step();
            }
            assertRefused(new SetLoad(0, true), 0, RefusalReason.HOST_LOST);
            rack.host.tell(rack.board, new HostAlive(1, 0));
            assertDone(new SetLoad(0, true));
        }
    }

    @Nested
    class CHECK_LEAD {
        private LeadChecked check(TestRack of, int channel) {
            int sequence = of.host.tell(of.board, new CheckLead(channel));
            of.run(1);
            LeadChecked checked = of.host.last(LeadChecked.class);
            assertThat(checked.requestSequence()).isEqualTo(sequence);
            assertThat(checked.channel()).isEqualTo(channel);
            return checked;
        }

        @Test
        void takes_one_scan_and_finds_an_attached_cell_that_does_not_move() {
            rack.run(1);
            rack.host.messages().clear();
            rack.host.tell(rack.board, new CheckLead(0));
            assertThat(rack.host.messages()).isEmpty();
            assertRefused(new CheckLead(0), 0, RefusalReason.BUSY);
            assertRefused(new SetLoad(0, true), 0, RefusalReason.BUSY);
            rack.run(1);

            LeadChecked checked = rack.host.last(LeadChecked.class);
            assertThat(checked.outcome()).isEqualTo(LeadOutcome.ATTACHED);
            assertThat(Math.abs(checked.voltsDuring() - checked.voltsBefore())).isLessThan(10);
        }

        @Test
        void moves_an_open_input() {
            for (boolean unipolar : new boolean[] {false, true}) {
                TestRack open = new TestRack(TestRack.one(TestRack.nmc("a").done())
                        .converter(unipolar ? ConverterSpec.USUAL.asUnipolar() : ConverterSpec.USUAL)
                        .faults(List.of(Fault.on(0, FaultKind.OPEN_LEAD, Trigger.at(0))))
                        .done());
                LeadChecked checked = check(open, 0);

                assertThat(checked.outcome()).isEqualTo(LeadOutcome.OPEN);
                assertThat(checked.voltsDuring() - checked.voltsBefore()).isGreaterThan(10_000);
            }
        }

        @Test
        void is_fooled_by_a_resistor_across_the_input() {
            TestRack open = TestRack.with(
                    Fault.on(0, FaultKind.OPEN_LEAD, Trigger.at(0)).with(Map.of("resistorAcross", 1.0)));

            assertThat(check(open, 0).outcome()).isEqualTo(LeadOutcome.ATTACHED);
        }

        @Test
        void cannot_be_done_while_the_board_s_own_switch_is_closed() {
            assertDone(new SetLoad(0, true));

            assertThat(check(rack, 0).outcome()).isEqualTo(LeadOutcome.NOT_DONE);
        }

        @Test
        void finds_a_tripped_protection_board_open() {
            TestRack tripped = TestRack.with(Fault.on(0, FaultKind.PROTECTION_CUT_OFF, Trigger.at(0)));

            assertThat(check(tripped, 0).outcome()).isEqualTo(LeadOutcome.OPEN);
        }

        @Test
        void is_ended_by_opening_the_load() {
            int sequence = rack.host.tell(rack.board, new CheckLead(0));
            assertDone(new SetLoad(0, false));

            assertThat(rack.host.last(LeadChecked.class).requestSequence()).isEqualTo(sequence);
            assertThat(rack.host.last(LeadChecked.class).outcome()).isEqualTo(LeadOutcome.NOT_DONE);
        }

        @Test
        void is_refused_while_bonded() {
            rack.board.bond(0);

            assertRefused(new CheckLead(0), 0, RefusalReason.WHILE_BONDED);
        }

        @Test
        void is_answered_at_once_where_the_next_scan_is_far_away() {
            assertDone(new SetInterval(60_000));
            rack.board.step();
            rack.host.hear(rack.board);
            rack.host.tell(rack.board, new CheckLead(0));

            assertThat(rack.host.last(LeadChecked.class).outcome()).isEqualTo(LeadOutcome.ATTACHED);
        }

        @Test
        void is_refused_where_the_channel_has_none() {
            assertRefused(new CheckLead(1), 1, RefusalReason.NO_SUCH_ABILITY);
            assertRefused(new CheckLead(2), 2, RefusalReason.NO_SUCH_ABILITY);
            assertRefused(new CheckLead(77), 77, RefusalReason.NO_SUCH_CHANNEL);
        }
    }

    @Test
    void BLINK_and_BUZZER_last_as_long_as_asked() {
        assertDone(new Blink(1, 3));
        assertDone(new Buzzer(2));
        rack.run(1);
        assertThat(rack.board.truth(1).blinking()).isTrue();
        assertThat(rack.board.isBuzzing()).isTrue();
        rack.run(2);
        assertThat(rack.board.truth(1).blinking()).isFalse();
        assertThat(rack.board.isBuzzing()).isFalse();
        assertRefused(new Blink(50, 1), 50, RefusalReason.NO_SUCH_CHANNEL);
    }

    @Test
    void a_board_without_a_buzzer_refuses_it() {
        TestRack quiet = new TestRack(
                TestRack.one(TestRack.nmc("a").done()).buzzer(false).done());
        quiet.host.tell(quiet.board, new Buzzer(1));

        assertThat(quiet.host.last(Refused.class).reason()).isEqualTo(RefusalReason.NO_SUCH_ABILITY);
    }

    @Test
    void SET_INTERVAL_keeps_to_its_range() {
        assertDone(new SetInterval(500));
        assertThat(rack.board.intervalMillis()).isEqualTo(500);
        assertRefused(new SetInterval(5), Refused.NO_CHANNEL, RefusalReason.OUT_OF_RANGE);
        assertRefused(new SetInterval(60_001), Refused.NO_CHANNEL, RefusalReason.OUT_OF_RANGE);
        assertThat(rack.board.intervalMillis()).isEqualTo(500);
    }

    @Test
    void OPEN_ALL_LOADS_opens_all() {
        assertDone(new SetLoad(0, true));
        assertDone(new OpenAllLoads());

        assertThat(rack.board.truth(0).loadApplied()).isFalse();
    }

    @Test
    void OPEN_ALL_LOADS_is_refused_by_a_board_that_switches_none() {
        TestRack byHand = new TestRack(
                TestRack.board(ChannelSpec.byHand(TestRack.nmc("a").done(), 10)).done());
        byHand.host.tell(byHand.board, new OpenAllLoads());

        assertThat(byHand.host.last(Refused.class).reason()).isEqualTo(RefusalReason.NO_SUCH_ABILITY);
    }

    @Nested
    class What_is_no_request {
        private void send(byte[] bytes) {
            rack.host.messages().clear();
            rack.board.receive(bytes, 0, bytes.length);
            rack.host.hear(rack.board);
        }

        /** A frame of any kind and payload, its checksum worked out. */
        private byte[] frame(int kind, int... payload) {
            byte[] bytes = new byte[8 + payload.length];
            bytes[0] = 1;
            bytes[1] = (byte) kind;
            bytes[2] = 9;
            for (int i = 0; i < payload.length; i++) {
                bytes[4 + i] = (byte) payload[i];
            }
            CRC32C crc = new CRC32C();
            crc.update(bytes, 0, 4 + payload.length);
            for (int i = 0; i < 4; i++) {
                bytes[4 + payload.length + i] = (byte) (crc.getValue() >> (8 * i));
            }
            byte[] encoded = new byte[Cobs.longestEncoded(bytes.length) + 1];
            int length = Cobs.encode(bytes, 0, bytes.length, encoded, 0);
            return Arrays.copyOf(encoded, length + 1);
        }

        @Test
        void a_host_s_kind_that_is_not_known_is_refused() {
            send(frame(0x7E));

            assertThat(rack.host.last(Refused.class))
                    .isEqualTo(new Refused(9, 0x7E, Refused.NO_CHANNEL, RefusalReason.UNKNOWN_KIND));
        }

        @Test
        void a_request_that_can_be_read_no_further_than_its_kind_is_refused() {
            send(frame(Kind.SET_LOAD.code(), 0));

            assertThat(rack.host.last(Refused.class))
                    .isEqualTo(new Refused(9, Kind.SET_LOAD.code(), Refused.NO_CHANNEL, RefusalReason.OUT_OF_RANGE));
        }

        @Test
        void a_board_s_own_kind_an_unknown_one_of_a_board_and_rubbish_are_passed_over() {
            send(FrameEncoder.encode(new Done(3, Kind.WHO.code()), 9));
            assertThat(rack.host.messages()).isEmpty();
            send(frame(0x2A));
            assertThat(rack.host.messages()).isEmpty();
            send(new byte[] {1, 2, 3, 0, 0, 5, 0});
            assertThat(rack.host.messages()).isEmpty();
        }

        @Test
        void a_frame_cut_short_is_given_up_after_a_second() {
            byte[] who = rack.host.frame(new Who());
            send(Arrays.copyOf(who, 5));
            rack.board.step();
            rack.board.step();
            rack.host.hear(rack.board);
            send(who);

            assertThat(rack.host.last(Identity.class).serialNumber()).isEqualTo("SIM-T");
        }
    }
}
