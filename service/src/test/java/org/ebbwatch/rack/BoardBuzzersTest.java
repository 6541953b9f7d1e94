package org.ebbwatch.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.github.f4b6a3.uuid.UuidCreator;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.ebbwatch.acquire.PortAddress;
import org.ebbwatch.acquire.SystemHostClock;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.rack.RunningRack.BoardPort;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.cell.Chemistry;
import org.ebbwatch.sim.link.SimRunner;
import org.ebbwatch.sim.link.TcpPort;
import org.ebbwatch.sim.rack.SimBoard;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Buzzers of simulated boards, over a real connection. */
class BoardBuzzersTest {
    @TempDir
    Path records;

    private static SimBoard board(boolean buzzer) {
        return new SimBoard(
                BoardSpec.build(
                                "EB-1",
                                List.of(ChannelSpec.switched(
                                        CellSpec.build("A-17", Chemistry.NMC, 2.0)
                                                .done(),
                                        22)))
                        .buzzer(buzzer)
                        .done(),
                5,
                1,
                1_000);
    }

    private RunningRack rack(SimRunner runner) {
        PortAddress address =
                PortAddress.parse(runner.address(), PortAddress.USUAL_BAUD).orElseThrow();
        return new RunningRack(
                List.of(new BoardPort("bench", Optional.empty(), address::port)),
                StoredRack.open(records),
                NightHours.usual(ZoneOffset.UTC),
                List.of(),
                Optional.empty(),
                UuidCreator::getTimeOrderedEpoch,
                new SystemHostClock());
    }

    private static void untilHeard(RunningRack rack) {
        await().atMost(Duration.ofMinutes(1))
                .until(() -> rack.view().boards().get(0).eventMillis() >= 0);
    }

    @Test
    void sound_when_they_are_asked_to_and_stop() throws IOException {
        SimBoard board = board(true);
        try (SimRunner runner = new SimRunner(board, TcpPort.listen(0), 1).start();
                RunningRack rack = rack(runner)) {
            assertThat(rack.buzz(200)).as("before the board was heard").isFalse();
            rack.start();
            untilHeard(rack);
            assertThat(rack.buzz(200)).isTrue();
            await().atMost(Duration.ofMinutes(1)).until(board::isBuzzing);
            assertThat(rack.buzz(0)).isTrue();
            await().atMost(Duration.ofMinutes(1)).until(() -> !board.isBuzzing());
        }
    }

    @Test
    void a_board_without_one_is_not_asked() throws IOException {
        try (SimRunner runner = new SimRunner(board(false), TcpPort.listen(0), 1).start();
                RunningRack rack = rack(runner)) {
            rack.start();
            untilHeard(rack);
            assertThat(rack.buzz(200)).isFalse();
        }
    }
}
