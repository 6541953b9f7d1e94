package org.ebbwatch.rough;

import io.micronaut.json.tree.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.StreamSupport;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.cell.Chemistry;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Trigger;
import org.ebbwatch.sim.link.SimRunner;
import org.ebbwatch.sim.link.TcpPort;
import org.ebbwatch.sim.rack.SimBoard;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;

/** A service in a process of its own with one board at real speed, looked at over REST. */
final class ServeNight implements AutoCloseable {
    private static final int CELLS = 8;
    private static final int SCAN_MILLIS = 500;
    private static final long PATIENCE_MILLIS = 180_000;
    private static final int LOOK_MILLIS = 100;

    private final SimRunner board;
    private final ServeProcess service;
    private final Rest rest;

    ServeNight(Path folder, Path records, Map<String, String> environment) throws IOException {
        List<ChannelSpec> cells = IntStream.range(0, CELLS)
                .mapToObj(i -> ChannelSpec.switched(
                        CellSpec.build("cell", Chemistry.NMC, 2.6)
                                .stateOfCharge(0.5)
                                .done(),
                        10))
                .toList();
        board = new SimRunner(
                        new SimBoard(BoardSpec.build("SIM-SERVE", cells).done(), 1, 1, SCAN_MILLIS),
                        TcpPort.listen(0),
                        1)
                .start();
        var text = new StringBuilder("boards:\n  - {name: left, port: \"" + board.address() + "\"}\ncells:\n");
        for (int i = 0; i < CELLS; i++) {
            text.append("  - {board: left, channel: " + i + ", tag: cell-" + i
                    + ", chemistry: nmc, ratedAmpereHours: 2.6, loadOhms: 10, switched: true}\n");
        }
        StoredRack.open(records).close();
        service = new ServeProcess(folder, records, text.toString(), List.of(), environment);
        rest = new Rest(service);
    }

    ServeProcess service() {
        return service;
    }

    SimRunner board() {
        return board;
    }

    /** Starts it and waits until it shows readings; the milliseconds that took, empty where it ended instead. */
    Optional<Long> start() throws IOException, InterruptedException {
        service.start();
        return await(() -> passages() == CELLS);
    }

    /** Lets a cell heat, and gives the milliseconds until the service tells. */
    Optional<Long> heat() throws InterruptedException {
        board.call(it -> {
                    it.addFault(Fault.on(0, FaultKind.WARMING, Trigger.at(0))
                            .with(Map.of("watts", 50.0, "riseMinutes", 0.0)));
                    return it;
                })
                .join();
        return await(() -> alarms().contains("HOT"));
    }

    /** Kinds of the alarms it tells of. */
    List<String> alarms() throws InterruptedException {
        return rest.get("/alarms").map(got -> kinds(got.json().get("alarms"))).orElse(List.of());
    }

    private static List<String> kinds(JsonNode alarms) {
        return StreamSupport.stream(alarms.values().spliterator(), false)
                .map(alarm -> alarm.get("kind").getStringValue())
                .toList();
    }

    private int passages() throws InterruptedException {
        return rest.get("/rack").map(got -> got.json().get("passages").size()).orElse(0);
    }

    /** Something to wait for. */
    @FunctionalInterface
    interface Look {
        boolean holds() throws InterruptedException;
    }

    /** Waits; the milliseconds that took, empty where it does not come. */
    Optional<Long> await(Look look) throws InterruptedException {
        long begunNanos = System.nanoTime();
        while (!look.holds()) {
            long millis = (System.nanoTime() - begunNanos) / 1_000_000;
            if (millis > PATIENCE_MILLIS || !service.isAlive()) {
                return Optional.empty();
            }
            Thread.sleep(LOOK_MILLIS);
        }
        return Optional.of((System.nanoTime() - begunNanos) / 1_000_000);
    }

    @Override
    public void close() throws IOException {
        service.close();
        board.close();
    }
}
