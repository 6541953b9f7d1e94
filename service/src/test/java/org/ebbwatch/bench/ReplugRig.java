package org.ebbwatch.bench;

import com.github.f4b6a3.uuid.UuidCreator;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.acquire.PortAddress;
import org.ebbwatch.acquire.SystemHostClock;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.passage.RackView.BoardView;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.rack.RunningRack;
import org.ebbwatch.rack.RunningRack.BoardPort;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.link.PtyPort;
import org.ebbwatch.sim.link.SimRunner;
import org.ebbwatch.sim.rack.SimBoard;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;

/** Boards at real speed behind links that are pulled and put back, each watched with one cell on it. Linux only. */
final class ReplugRig implements AutoCloseable {
    private static final long INTERVAL_MILLIS = 500;
    private static final long LOOK_MILLIS = 10;
    private static final long PATIENCE_MILLIS = 60_000;

    /**
     * What one replug took, in milliseconds.
     *
     * @param silent from the pull to the finding SILENT
     * @param connected from the board's return to its proof who it is
     * @param heard from the board's return to its next reading
     */
    record Round(long silent, long connected, long heard) {}

    private final Path links;
    private final List<Plug> plugs = new ArrayList<>();
    private final RunningRack rack;

    /** A rack of so many boards, none of them plugged in yet. */
    ReplugRig(int boards, Path directory) throws IOException {
        links = Files.createDirectories(directory.resolve("by-id"));
        List<BoardPort> ports = new ArrayList<>();
        for (int board = 0; board < boards; board++) {
            Plug plug = new Plug(board);
            plugs.add(plug);
            PortAddress address = new PortAddress.Serial(plug.link.toString(), 115_200);
            ports.add(new BoardPort(plug.name, Optional.of(plug.name), address::port));
        }
        rack = new RunningRack(
                ports,
                StoredRack.open(directory.resolve("records")),
                NightHours.usual(ZoneOffset.UTC),
                List.of(),
                Optional.empty(),
                UuidCreator::getTimeOrderedEpoch,
                new SystemHostClock());
        for (Plug plug : plugs) {
            var cell = new CellCard("cell " + plug.name, Chemistry.LAYERED_OXIDE, 2, 22, false, false);
            rack.expect(plug.name, 0, cell, Procedure.careful());
        }
        rack.start();
    }

    /** The boards' plugs. */
    List<Plug> plugs() {
        return plugs;
    }

    @Override
    public void close() throws IOException {
        rack.close();
        for (Plug plug : plugs) {
            plug.pull();
        }
    }

    private static void await(BooleanSupplier happened, String what) throws InterruptedException {
        long until = System.nanoTime() + PATIENCE_MILLIS * 1_000_000;
        while (!happened.getAsBoolean()) {
            if (System.nanoTime() > until) {
                throw new IllegalStateException("not within " + PATIENCE_MILLIS / 1_000 + " s: " + what);
            }
            Thread.sleep(LOOK_MILLIS);
        }
    }

    /** One board and the way to it. The board keeps its power while it is unplugged. */
    final class Plug {
        private final String name;
        private final Path link;
        private final SimBoard board;
        private SimRunner runner;

        private Plug(int number) {
            name = "EB-" + number;
            link = links.resolve("board-" + number);
            ChannelSpec channel = ChannelSpec.byHand(
                    CellSpec.build("cell", org.ebbwatch.sim.cell.Chemistry.NMC, 2.0)
                            .done(),
                    22);
            board = new SimBoard(
                    BoardSpec.build(name, List.of(channel))
                            .thermometers(true, false, 0, false)
                            .done(),
                    number,
                    1,
                    INTERVAL_MILLIS);
        }

        /** Puts the plug in, into another port each time, and waits until the cell is watched. */
        void begin() throws IOException, InterruptedException {
            putIn();
            await(() -> !rack.view().passages().isEmpty() && view().link() == LinkState.CONNECTED, name + " heard");
            await(() -> isPassageThere() && !isSilent(), "the cell of " + name + " watched");
        }

        /** Pulls the plug, waits for the silence, puts it back and waits for a reading. */
        Round replug() throws IOException, InterruptedException {
            long seenMillis = view().eventMillis();
            await(() -> view().eventMillis() > seenMillis, name + " heard before the pull");
            long pulled = System.nanoTime();
            pull();
            await(this::isSilent, name + " told silent");
            long silent = System.nanoTime();
            long lastMillis = view().eventMillis();
            long returned = System.nanoTime();
            putIn();
            await(() -> view().link() == LinkState.CONNECTED, name + " connected");
            long connected = System.nanoTime();
            await(() -> view().eventMillis() > lastMillis && !isSilent(), name + " heard again");
            return new Round(
                    (silent - pulled) / 1_000_000,
                    (connected - returned) / 1_000_000,
                    (System.nanoTime() - returned) / 1_000_000);
        }

        private void putIn() throws IOException {
            PtyPort port = PtyPort.open();
            runner = new SimRunner(board, port, 1).start();
            Files.createSymbolicLink(link, Path.of(port.address()));
        }

        private void pull() throws IOException {
            Files.deleteIfExists(link);
            if (runner != null) {
                runner.close();
                runner = null;
            }
        }

        private BoardView view() {
            return rack.view().boards().stream()
                    .filter(each -> each.name().equals(name))
                    .findFirst()
                    .orElseThrow();
        }

        private boolean isPassageThere() {
            return rack.view().on(name, 0).isPresent();
        }

        private boolean isSilent() {
            RackView view = rack.view();
            return view.on(name, 0).orElseThrow().findings().stream()
                    .anyMatch(finding -> finding.kind() == FindingKind.SILENT);
        }
    }
}
