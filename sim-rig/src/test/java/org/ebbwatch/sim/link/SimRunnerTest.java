package org.ebbwatch.sim.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import org.ebbwatch.rig.message.Who;
import org.ebbwatch.sim.TestHost;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.cell.Chemistry;
import org.ebbwatch.sim.rack.SimBoard;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class SimRunnerTest {
    private static final int SPEED = 65_535;

    private static SimBoard board(int speed) {
        ChannelSpec channel = ChannelSpec.switched(CellSpec.of("a", Chemistry.NMC, 2.6), 10);
        return new SimBoard(BoardSpec.build("SIM-R", List.of(channel)).done(), 1, speed, 1_000);
    }

    /** A port without an operating system: what was written, and what will be read. */
    private static final class HeldPort implements SimPort {
        private final List<byte[]> written = new ArrayList<>();
        private final List<byte[]> toRead = new ArrayList<>();
        private boolean full;

        @Override
        public String address() {
            return "held";
        }

        @Override
        public int read(byte[] into, int waitMillis) {
            if (toRead.isEmpty()) {
                return 0;
            }
            byte[] next = toRead.remove(0);
            System.arraycopy(next, 0, into, 0, next.length);
            return next.length;
        }

        @Override
        public int write(byte[] from, int offset, int length) {
            if (full) {
                return 0;
            }
            int taken = Math.min(100, length);
            written.add(Arrays.copyOfRange(from, offset, offset + taken));
            return taken;
        }

        @Override
        public void close() {}
    }

    private static final class HandClock {
        private long nanos;
    }

    @Test
    void scans_come_at_the_pace_of_the_host_s_clock() throws IOException {
        HandClock clock = new HandClock();
        SimBoard board = board(1);
        HeldPort port = new HeldPort();
        SimRunner runner = new SimRunner(board, port, 1, () -> clock.nanos);
        Pace pace = new Pace(1, 0);
        for (int tenth = 1; tenth <= 50; tenth++) {
            clock.nanos = tenth * 100_000_000L;
            runner.work(pace);
        }
        assertThat(board.eventMillis()).isEqualTo(5_000);
        TestHost host = new TestHost();
        port.written.forEach(bytes -> host.hear(bytes, bytes.length));
        assertThat(host.scans()).isEqualTo(5);
        assertThat(host.decoder().framesBad()).isZero();
    }

    @Test
    void an_accelerated_board_stops_for_its_host_and_goes_on_with_it() throws IOException {
        HandClock clock = new HandClock();
        SimBoard board = board(600);
        HeldPort port = new HeldPort();
        SimRunner runner = new SimRunner(board, port, 600, () -> clock.nanos);
        Pace pace = new Pace(600, 0);
        TestHost host = new TestHost();
        for (int i = 0; i < 100; i++) {
            clock.nanos += 10_000_000;
            runner.work(pace);
        }
        assertThat(board.eventMillis()).isEqualTo(2_000);

        port.written.forEach(bytes -> host.hear(bytes, bytes.length));
        port.toRead.add(host.frame(host.alive()));
        for (int i = 0; i < 100; i++) {
            clock.nanos += 10_000_000;
            runner.work(pace);
        }
        assertThat(board.eventMillis()).isEqualTo(4_000);
    }

    @Test
    void what_nobody_fetches_for_a_second_is_dropped_in_whole_frames() throws IOException {
        HandClock clock = new HandClock();
        SimBoard board = board(1);
        HeldPort port = new HeldPort();
        SimRunner runner = new SimRunner(board, port, 1, () -> clock.nanos);
        Pace pace = new Pace(1, 0);
        port.full = true;
        for (int second = 1; second <= 600; second++) {
            clock.nanos = second * 1_000_000_000L;
            runner.work(pace);
        }
        port.full = false;
        for (int second = 601; second <= 620; second++) {
            clock.nanos = second * 1_000_000_000L;
            runner.work(pace);
        }
        TestHost host = new TestHost();
        port.written.forEach(bytes -> host.hear(bytes, bytes.length));
        assertThat(host.decoder().framesBad()).isZero();
        assertThat(host.scans()).isBetween(20, 25);
        assertThat(host.lastReadings().scan()).isEqualTo(620);
    }

    @Test
    void a_host_on_a_pseudo_terminal_drives_a_board_as_fast_as_it_answers() throws Exception {
        SimBoard board = board(SPEED);
        TestHost host = new TestHost();
        try (SimRunner runner = new SimRunner(board, PtyPort.open(), SPEED).start();
                RandomAccessFile line = new RandomAccessFile(runner.address(), "rw")) {
            line.write(host.frame(new Who()));
            byte[] buffer = new byte[4096];
            int answered = 0;
            while (host.scans() < 2_000) {
                int count = line.read(buffer);
                host.hear(buffer, count);
                if (host.scans() > answered) {
                    answered = host.scans();
                    line.write(host.frame(host.alive()));
                }
            }
            long now = runner.call(SimBoard::eventMillis).get();

            assertThat(host.decoder().framesBad()).isZero();
            assertThat(host.decoder().sequenceGaps()).isZero();
            assertThat(now).isLessThanOrEqualTo(1_000 * host.lastReadings().scan() + 2_000);
            assertThat(host.lastReadings().boardMillis())
                    .isEqualTo(1_000 * host.lastReadings().scan());
        }
    }

    @Test
    void acts_run_on_the_board_s_thread_and_give_back_what_they_made_or_threw() throws Exception {
        SimRunner runner = new SimRunner(board(1), TcpPort.listen(0), 1).start();
        try (runner) {
            assertThat(runner.call(board -> Thread.currentThread().getName()).get())
                    .isEqualTo("sim SIM-R");
            runner.call(board -> {
                        board.bond(0);
                        return null;
                    })
                    .get();
            assertThat(runner.call(board -> board.truth(0).bonded()).get()).isTrue();
            CompletableFuture<String> failing =
                    runner.call(board -> board.truth(99).tag());
            assertThatThrownBy(failing::get)
                    .isInstanceOf(ExecutionException.class)
                    .hasMessageContaining("channel is 99");
        }
        assertThat(runner.call(SimBoard::eventMillis).isCancelled()).isTrue();
        assertThat(runner.failure()).isEmpty();
    }

    @Test
    void a_port_that_fails_ends_the_runner_with_its_reason() throws Exception {
        PtyPort port = PtyPort.open();
        SimRunner runner = new SimRunner(board(1), port, 1).start();
        port.close();
        runner.join();

        assertThat(runner.failure())
                .hasValueSatisfying(reason -> assertThat(reason).hasMessageContaining("is closed"));
        runner.close();
    }
}
