package org.ebbwatch.rough;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.sim.link.PtyPort;
import org.ebbwatch.sim.link.TcpPort;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short form of the link campaign, and what is no matter of time. */
class LineTest {
    private static final long MILLIS = 7_000;
    private static final int CELLS = 2;
    private static final int SCAN_MILLIS = 50;
    private static final Duration PATIENCE = Duration.ofMinutes(2);

    @TempDir
    Path folder;

    @Test
    void no_line_however_bad_makes_a_wrong_reading_or_a_wrong_finding() throws Exception {
        List<LineCase> cases = LineCase.all(1, 3_000);
        ExecutorService racks = Executors.newCachedThreadPool();
        try {
            List<Future<LineCase.Result>> results = IntStream.range(0, cases.size())
                    .mapToObj(i -> racks.submit(() -> cases.get(i).run(folder.resolve("line" + i), MILLIS)))
                    .toList();
            for (Future<LineCase.Result> result : results) {
                assertThat(result.get().trouble().found()).isEmpty();
                assertThat(result.get().sent()).isPositive();
            }
        } finally {
            racks.shutdown();
        }
    }

    @Test
    void of_two_boards_that_say_they_are_the_same_only_the_first_is_believed() throws Exception {
        var trouble = new Trouble();
        try (LineRack rack = new LineRack(folder, CELLS, SCAN_MILLIS)) {
            rack.board("left", "SIM-TWIN", TcpPort.listen(0), Harm.NONE, List.of())
                    .board("right", "SIM-TWIN", TcpPort.listen(0), Harm.NONE, List.of())
                    .start();
            await().atMost(PATIENCE).until(() -> List.of("left", "right").stream()
                    .map(board -> rack.view(board).link())
                    .sorted()
                    .toList()
                    .equals(List.of(LinkState.CONNECTED, LinkState.REFUSED)));
            String refused = rack.view("left").link() == LinkState.REFUSED ? "left" : "right";
            assertThat(rack.view(refused).detail()).contains("SIM-TWIN", refused.equals("left") ? "right" : "left");
            await().atMost(PATIENCE).until(() -> rack.alarms().contains("SILENT"));
            assertThat(rack.stop(trouble).scans().get(refused).scans()).isEmpty();
        }
        assertThat(trouble.found()).isEmpty();
    }

    @Test
    void a_port_that_another_program_has_is_told_of_and_taken_once_it_is_free() throws Exception {
        var trouble = new Trouble();
        PtyPort port = PtyPort.open();
        try (PortHog hog = new PortHog(port.address());
                LineRack rack = new LineRack(folder, CELLS, SCAN_MILLIS)) {
            rack.board("left", "SIM-PORT", port, Harm.NONE, List.of()).start();
            await().atMost(PATIENCE).until(() -> rack.view("left").detail().contains("in use, by another program"));
            await().atMost(PATIENCE).until(() -> rack.alarms().contains("SILENT"));
            hog.letGo();
            await().atMost(PATIENCE).until(() -> rack.view("left").link() == LinkState.CONNECTED);
            await().atMost(PATIENCE).until(() -> rack.view("left").eventMillis() > 0);
            rack.stop(trouble);
        }
        assertThat(trouble.found()).isEmpty();
    }
}
