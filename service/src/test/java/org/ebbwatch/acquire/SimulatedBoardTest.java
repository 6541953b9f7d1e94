package org.ebbwatch.acquire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.ebbwatch.sim.link.PtyPort;
import org.ebbwatch.sim.link.SimRunner;
import org.ebbwatch.sim.rack.SimBoard;
import org.ebbwatch.sim.scenario.Scenario;
import org.ebbwatch.sim.scenario.ScenarioException;
import org.ebbwatch.time.EventClock;
import org.ebbwatch.time.Gap;
import org.ebbwatch.time.GapBasis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;

/** The whole way from the simulator's physics over a pseudo-terminal to the listener, at ten thousand times real speed. */
@EnabledOnOs(value = OS.LINUX, disabledReason = "the simulator's pseudo-terminals are Linux's")
class SimulatedBoardTest {

    private static final int SPEED = 10_000;
    private static final long HOUR = 3_600_000;

    private static final String SCENARIO =
            """
            seed: 7
            speed: 10000
            interval: 1s
            boards:
              - serialNumber: SIM-1
                faults:
                  - kind: silent
                    at: 30min
                    lasts: 10min
                  - kind: reboot
                    at: 1h
            """;

    @Test
    void only_what_the_script_says_is_found() throws ScenarioException, IOException {
        RecordingListener listener = new RecordingListener();
        SimBoard board = SimBoard.of(Scenario.parse(SCENARIO, "scenario"), 0);
        try (SimRunner runner = new SimRunner(board, PtyPort.open(), SPEED).start();
                BoardAgent agent = new BoardAgent(
                        "left",
                        Optional.of("SIM-1"),
                        new SerialNumbers(),
                        new PortAddress.Serial(runner.address(), PortAddress.USUAL_BAUD)::port,
                        EventClock.fresh(),
                        listener,
                        new RackLock(),
                        new SystemHostClock())) {
            agent.start();
            await().atMost(Duration.ofSeconds(60)).until(() -> lastEventMillis(listener) > 2 * HOUR);
        }
        List<Happening> rare = listener.heard.stream()
                .filter(heard -> !(heard instanceof Happening.Scan) && !(heard instanceof Happening.Link))
                .toList();
        assertThat(rare).hasSize(6);
        assertThat(rare.get(0)).isEqualTo(new Happening.Identified("SIM-1"));
        assertThat(rare.get(1)).isInstanceOf(Happening.Silent.class);
        assertThat(rare.get(2)).isInstanceOfSatisfying(Happening.GapBefore.class, before -> {
            assertThat(before.gap().exact()).isTrue();
            assertThat(before.gap().leastMillis()).isBetween(600_000L, 602_000L);
        });
        assertThat(rare.get(3)).isEqualTo(new Happening.Identified("SIM-1"));
        assertThat(rare.get(4)).isEqualTo(new Happening.Rebooted(2));
        assertThat(rare.get(5)).isInstanceOfSatisfying(Happening.GapBefore.class, before -> assertThat(before.gap())
                .extracting(Gap::basis)
                .isEqualTo(GapBasis.HOST_MONOTONIC));
    }

    private static long lastEventMillis(RecordingListener listener) {
        int size = listener.heard.size();
        return size > 0 && listener.heard.get(size - 1) instanceof Happening.Scan scan ? scan.eventMillis() : 0;
    }
}
