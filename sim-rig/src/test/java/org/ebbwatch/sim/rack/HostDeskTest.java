package org.ebbwatch.sim.rack;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
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
            assertRefused(new CheckLead(1), 1, RefusalReason.BUSY);
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
        void is_refused_where_the_channel_has_none() {
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
    void a_board_s_own_kind_and_rubbish_are_refused_or_ignored() {
        byte[] frame = FrameEncoder.encode(new Done(3, Kind.WHO.code()), 9);
        rack.board.receive(frame, 0, frame.length);
        rack.host.hear(rack.board);
        assertThat(rack.host.last(Refused.class))
                .isEqualTo(new Refused(9, Kind.DONE.code(), Refused.NO_CHANNEL, RefusalReason.UNKNOWN_KIND));

        rack.host.messages().clear();
        rack.board.receive(new byte[] {1, 2, 3, 0, 0, 5, 0}, 0, 7);
        rack.host.hear(rack.board);
        assertThat(rack.host.messages()).isEmpty();
    }
}
