package org.ebbwatch.sim.rack;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.ebbwatch.rig.message.HostAlive;
import org.ebbwatch.rig.message.Who;
import org.ebbwatch.sim.TestHost;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Trigger;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CreditTest {
    private static final int SPEED = 600;

    private final TestHost host = new TestHost();

    private static BoardSpec.Builder spec() {
        return TestRack.one(TestRack.nmc("a").done());
    }

    private SimBoard board(BoardSpec spec, long interval) {
        SimBoard board = new SimBoard(spec, 1, SPEED, interval);
        host.hear(board);
        return board;
    }

    private static int stepsWhileAllowed(SimBoard board) {
        int steps = 0;
        while (board.mayStep() && steps < 100_000) {
            board.step();
            steps++;
        }
        return steps;
    }

    @ParameterizedTest
    @ValueSource(longs = {10, 100, 500, 1_000, 2_000})
    void a_board_runs_at_most_2_s_ahead_of_what_its_host_has_seen(long interval) {
        SimBoard board = board(spec().done(), interval);
        assertThat(stepsWhileAllowed(board)).isEqualTo((int) (2_000 / interval));

        for (int round = 0; round < 50; round++) {
            host.hear(board);
            host.acknowledge(board);
            long acknowledged = board.eventMillis();
            stepsWhileAllowed(board);
            assertThat(board.eventMillis() - acknowledged).isEqualTo(2_000);
        }
    }

    @Test
    void a_half_acknowledged_credit_gives_half_the_steps() {
        SimBoard board = board(spec().done(), 100);
        stepsWhileAllowed(board);
        host.tell(board, new HostAlive(1, 10));

        assertThat(stepsWhileAllowed(board)).isEqualTo(10);
    }

    @Test
    void a_long_interval_gives_one_scan_at_a_time() {
        SimBoard board = board(spec().done(), 60_000);
        assertThat(stepsWhileAllowed(board)).isEqualTo(1);
        host.hear(board);
        host.acknowledge(board);
        assertThat(stepsWhileAllowed(board)).isEqualTo(1);
    }

    @Test
    void another_boot_s_scan_or_one_not_sent_gives_none() {
        SimBoard board = board(spec().done(), 1_000);
        stepsWhileAllowed(board);
        host.tell(board, new HostAlive(77, 2));
        host.tell(board, new HostAlive(1, 99));

        assertThat(stepsWhileAllowed(board)).isZero();
    }

    @Test
    void a_new_host_starts_with_fresh_credit() {
        SimBoard board = board(spec().done(), 1_000);
        stepsWhileAllowed(board);
        host.tell(board, new Who());

        assertThat(stepsWhileAllowed(board)).isEqualTo(2);
    }

    @Test
    void at_speed_1_a_board_waits_for_nobody() {
        SimBoard board = new SimBoard(spec().done(), 1, 1, 1_000);
        for (int i = 0; i < 100; i++) {
            assertThat(board.mayStep()).isTrue();
            board.step();
        }
    }

    @Test
    void a_scripted_silent_board_runs_on_without_credit_and_needs_it_again_afterwards() {
        Fault silent = Fault.onBoard(FaultKind.SILENT, Trigger.at(1_500)).lasting(600_000);
        SimBoard board = board(spec().faults(List.of(silent)).done(), 1_000);
        assertThat(stepsWhileAllowed(board)).isEqualTo(603);
        assertThat(board.isSilent()).isFalse();

        host.hear(board);
        assertThat(host.lastReadings().scan()).isEqualTo(603);
        host.acknowledge(board);
        assertThat(stepsWhileAllowed(board)).isEqualTo(2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"CORRUPT_BYTES", "DROPPED_BYTES"})
    void harmed_scans_do_not_stop_a_board_for_ever(String kind) {
        Fault harm = Fault.onBoard(FaultKind.valueOf(kind), Trigger.at(0)).with(Map.of("perMillion", 8_000.0));
        SimBoard board = board(spec().faults(List.of(harm)).done(), 1_000);
        for (int round = 0; round < 3_000; round++) {
            stepsWhileAllowed(board);
            host.hear(board);
            host.acknowledge(board);
        }
        assertThat(board.eventMillis()).isGreaterThan(3_000_000);
        assertThat(host.decoder().framesBad()).isGreaterThan(300);
        assertThat(host.scans()).isGreaterThan(1_000);
    }
}
