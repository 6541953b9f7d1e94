package org.ebbwatch.demo;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.acquire.PortAddress;
import org.ebbwatch.demo.Workshop.Bench;
import org.ebbwatch.rack.RunningRack.BoardPort;
import org.ebbwatch.sim.link.PtyPort;
import org.ebbwatch.sim.link.SimRunner;
import org.ebbwatch.sim.rack.SimBoard;

/** The story's boards, each at work on a pseudo-terminal of its own. */
final class SimulatedRack implements AutoCloseable {
    static final long INTERVAL_MILLIS = 2_000;

    private final Map<String, SimRunner> runners = new LinkedHashMap<>();
    private final List<BoardPort> ports = new ArrayList<>();

    /**
     * Opens the pseudo-terminals and starts the boards.
     *
     * @throws IOException if this machine gives no pseudo-terminal
     */
    SimulatedRack(Workshop workshop, long seed, int speed) throws IOException {
        for (Bench bench : workshop.boards()) {
            var board = new SimBoard(bench.spec(), seed + runners.size(), speed, INTERVAL_MILLIS);
            SimRunner runner = new SimRunner(board, PtyPort.open(), speed).start();
            runners.put(bench.name(), runner);
            var address = new PortAddress.Serial(runner.address(), PortAddress.USUAL_BAUD);
            ports.add(new BoardPort(bench.name(), Optional.of(bench.spec().serialNumber()), address::port));
        }
    }

    /** Where the service finds the boards. */
    List<BoardPort> ports() {
        return ports;
    }

    SimRunner board(String name) {
        return runners.get(name);
    }

    @Override
    public void close() throws IOException {
        for (SimRunner runner : runners.values()) {
            runner.close();
        }
    }
}
