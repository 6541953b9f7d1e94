package org.ebbwatch.sim.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.SetInterval;
import org.ebbwatch.rig.message.SetLoad;
import org.ebbwatch.rig.message.Who;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Trigger;
import org.junit.jupiter.api.Test;

/** Each fault of a whole board: what is true, and what arrives. */
class BoardFaultsTest {
    private static final Trigger SOON = Trigger.at(30_000);
    private static final int AMBIENT = 1;
    private static final int BANK = 3;

    @Test
    void a_silent_board_sends_and_hears_nothing_and_scans_on() {
        TestRack rack = TestRack.with(Fault.onBoard(FaultKind.SILENT, SOON).lasting(20_000));
        rack.run(29);
        int heard = rack.host.scans();
        rack.host.messages().clear();
        for (int i = 0; i < 20; i++) {
            rack.board.step();
            rack.host.tell(rack.board, new Who());
        }
        assertThat(rack.board.isSilent()).isTrue();
        assertThat(rack.board.boardFaults()).containsExactly(FaultKind.SILENT);
        assertThat(rack.host.scans()).isEqualTo(heard);
        assertThat(rack.host.messages()).isEmpty();
        rack.run(1);
        assertThat(rack.host.lastReadings().scan()).isEqualTo(50);
        assertThat(rack.host.lastReadings().boardMillis()).isEqualTo(50_000);
    }

    @Test
    void a_long_silence_is_a_lost_host_to_the_board() {
        TestRack rack = TestRack.with(Fault.onBoard(FaultKind.SILENT, SOON).lasting(60_000));
        rack.host.tell(rack.board, new SetLoad(0, true));
        rack.run(29);
        for (int i = 0; i < 60; i++) {
            rack.board.step();
        }
        rack.run(2);

        assertThat(rack.host.reading(0).is(Reading.LOAD_APPLIED)).isFalse();
        assertThat(rack.board.truth(0).loadApplied()).isFalse();
    }

    @Test
    void corrupted_bytes_are_rejected_by_their_checksum_and_the_rest_arrives() {
        TestRack rack =
                TestRack.with(Fault.onBoard(FaultKind.CORRUPT_BYTES, SOON).with(Map.of("perMillion", 3_000.0)));
        rack.run(3_030);

        assertThat(rack.host.decoder().framesBad()).isBetween(300L, 900L);
        assertThat(rack.host.scans()).isBetween(2_100, 2_800);
    }

    @Test
    void dropped_bytes_lose_frames_and_the_rest_arrives() {
        TestRack rack =
                TestRack.with(Fault.onBoard(FaultKind.DROPPED_BYTES, SOON).with(Map.of("perMillion", 3_000.0)));
        rack.run(3_030);

        assertThat(rack.host.decoder().framesBad()).isBetween(300L, 900L);
        assertThat(rack.host.scans()).isBetween(2_100, 2_800);
    }

    @Test
    void a_warm_room_warms_all_and_a_room_that_cools_again_all_too() {
        TestRack rack =
                TestRack.with(Fault.onBoard(FaultKind.AMBIENT_RISE, SOON).lasting(6 * 3_600_000L));
        rack.run(6 * 3600);
        assertThat(rack.host.celsius(AMBIENT)).isCloseTo(36, within(0.8));
        assertThat(rack.host.celsius(0)).isCloseTo(36, within(1.2));
        rack.run(8 * 3600);
        assertThat(rack.host.celsius(AMBIENT)).isCloseTo(21, within(0.8));
    }

    @Test
    void the_sun_falls_on_all() {
        TestRack rack = TestRack.with(Fault.onBoard(FaultKind.SUN, SOON));
        rack.run(2 * 3600);

        assertThat(rack.host.celsius(AMBIENT)).isCloseTo(33, within(0.8));
        assertThat(rack.host.celsius(0)).isGreaterThan(31);
    }

    @Test
    void an_odd_clock_runs_off() {
        TestRack rack = TestRack.with(Fault.onBoard(FaultKind.ODD_CLOCK, Trigger.at(0)));
        rack.run(1_000);

        assertThat(rack.board.eventMillis()).isEqualTo(1_000_000);
        assertThat((double) rack.host.lastReadings().boardMillis()).isCloseTo(1_020_000, within(100.0));
    }

    @Test
    void a_reboot_opens_loads_and_starts_counting_again() {
        TestRack rack = TestRack.with(Fault.onBoard(FaultKind.REBOOT, SOON).lasting(5_000));
        rack.host.tell(rack.board, new SetLoad(0, true));
        rack.run(29);
        assertThat(rack.host.reading(0).is(Reading.LOAD_APPLIED)).isTrue();
        rack.host.messages().clear();
        for (int i = 0; i < 5; i++) {
            rack.board.step();
            rack.host.hear(rack.board);
        }
        assertThat(rack.board.isSilent()).isTrue();
        assertThat(rack.host.lastReadings().scan()).isEqualTo(29);
        rack.run(1);

        assertThat(rack.host.last(Identity.class).bootNumber()).isEqualTo(2);
        assertThat(rack.host.lastReadings().bootNumber()).isEqualTo(2);
        assertThat(rack.host.lastReadings().scan()).isEqualTo(1);
        assertThat(rack.host.lastReadings().boardMillis()).isLessThanOrEqualTo(1_000);
        assertThat(rack.host.reading(0).is(Reading.LOAD_APPLIED)).isFalse();
        assertThat(rack.board.truth(0).loadApplied()).isFalse();
    }

    @Test
    void a_reboot_forgets_an_interval_that_was_set() {
        TestRack rack = TestRack.with(Fault.onBoard(FaultKind.REBOOT, SOON));
        rack.host.tell(rack.board, new SetInterval(500));
        rack.run(40);

        assertThat(rack.board.intervalMillis()).isEqualTo(1_000);
    }

    @Test
    void a_reboot_without_a_duration_loses_no_scan() {
        TestRack rack = TestRack.with(Fault.onBoard(FaultKind.REBOOT, SOON));
        rack.run(30);

        assertThat(rack.host.lastReadings().bootNumber()).isEqualTo(2);
        assertThat(rack.host.lastReadings().scan()).isEqualTo(1);
        assertThat(rack.host.scans()).isEqualTo(30);
    }

    @Test
    void a_bank_that_loses_its_cooling_gets_hot() {
        TestRack rack = TestRack.with(Fault.onBoard(FaultKind.HOT_BANK, SOON).with(Map.of("factor", 60.0)));
        rack.host.tell(rack.board, new SetLoad(0, true));
        rack.run(2 * 3600);

        assertThat(rack.host.celsius(BANK)).isGreaterThan(32);
        assertThat(rack.host.celsius(AMBIENT)).isLessThan(22);
    }

    @Test
    void a_contact_closes_and_opens() {
        TestRack rack = new TestRack(TestRack.one(TestRack.nmc("a").done())
                .contactInputs(2)
                .faults(List.of(Fault.onBoard(FaultKind.CONTACT, SOON)
                        .with(Map.of("input", 1.0))
                        .lasting(10_000)))
                .done());
        rack.run(29);
        assertThat(rack.host.lastReadings().contacts()).isZero();
        rack.run(5);
        assertThat(rack.host.lastReadings().contacts()).isEqualTo(2);
        rack.run(10);
        assertThat(rack.host.lastReadings().contacts()).isZero();
    }
}
