package org.ebbwatch.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.ebbwatch.killed.WatchProcess;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.Refolded;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.cell.Chemistry;
import org.ebbwatch.sim.link.SimRunner;
import org.ebbwatch.sim.link.TcpPort;
import org.ebbwatch.sim.rack.SimBoard;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;

/**
 * Kills a watching process at random moments, at real speed, and measures how much of what the board had sent is missing from
 * the records. Arguments: how many kills (20), seed (1). See docs/benchmarks/restart.md.
 */
final class RestartBench {
    private static final long INTERVAL_MILLIS = 50;
    private static final long LEAST_MILLIS = 2_000;
    private static final int SPREAD_MILLIS = 4_000;

    private RestartBench() {}

    public static void main(String[] arguments) throws Exception {
        int kills = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 20;
        var random = new Random(arguments.length > 1 ? Long.parseLong(arguments[1]) : 1);
        Path records = Files.createTempDirectory("ebbwatch-restart");
        List<ChannelSpec> cells = WatchProcess.CELLS.stream()
                .map(card -> ChannelSpec.switched(
                        CellSpec.build(card.tag(), Chemistry.NMC, card.ratedAmpereHours())
                                .done(),
                        card.loadOhms()))
                .toList();
        BoardSpec spec = BoardSpec.build("SIM-BENCH", cells).done();
        var missing = new ArrayList<Long>();
        int otherwise = 0;
        try (SimRunner board = new SimRunner(new SimBoard(spec, 1, 1, INTERVAL_MILLIS), TcpPort.listen(0), 1).start()) {
            for (int kill = 1; kill <= kills; kill++) {
                long sent = killWhileWatching(board, records, LEAST_MILLIS + random.nextInt(SPREAD_MILLIS));
                try (StoredRack storage = StoredRack.open(records)) {
                    missing.add(sent - lastScan(storage));
                    otherwise += foldedOtherwise(storage);
                }
                System.out.print("\rkill " + kill + " of " + kills);
            }
        }
        Collections.sort(missing);
        System.out.printf(
                Locale.ROOT,
                "%n| kills | interval | missing, median | missing, most | passages folded otherwise |%n| %d | %d ms | %d ms | %d ms | %d |%n",
                kills,
                INTERVAL_MILLIS,
                missing.get(missing.size() / 2) * INTERVAL_MILLIS,
                missing.get(missing.size() - 1) * INTERVAL_MILLIS,
                otherwise);
    }

    /** Gives the number of the last scan that the board had made when the process was killed. */
    private static long killWhileWatching(SimRunner board, Path records, long millis)
            throws IOException, InterruptedException {
        String port = board.address().substring(board.address().lastIndexOf(':') + 1);
        Process process = WatchProcess.command(records, port)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        var told = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
        for (String line = told.readLine(); line != null && !WatchProcess.isHeard(line); line = told.readLine()) {
            // Until the board is heard.
        }
        Thread.sleep(millis);
        long sent = board.call(SimBoard::lastScan).join();
        process.destroyForcibly().waitFor();
        return sent;
    }

    private static long lastScan(StoredRack storage) {
        return storage.clock(WatchProcess.BOARD).lastSeen().scan();
    }

    private static int foldedOtherwise(StoredRack storage) {
        int otherwise = 0;
        for (PassageCard card : storage.cards()) {
            Refolded refolded = storage.refold(card);
            List<String> recorded = storage.recorded(card);
            boolean begins = refolded.events().size() >= recorded.size()
                    && refolded.events().subList(0, recorded.size()).equals(recorded);
            otherwise += begins ? 0 : 1;
        }
        return otherwise;
    }
}
