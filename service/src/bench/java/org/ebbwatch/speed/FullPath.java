package org.ebbwatch.speed;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.acquire.BoardSession;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.BoardControl;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.RackWatch;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.WallQuality;
import org.slf4j.LoggerFactory;

/**
 * A sample's whole way on one thread: a board's bytes, frame, scan, judge, tail, segment, database, forced to disk every two
 * seconds. Beside it, in the same run, the same readings as one row each of an H2 and of an SQLite file. Command and results:
 * {@code docs/benchmarks/full-path.md}.
 */
public final class FullPath {
    private static final int CALM_SCANS = 30;
    private static final int SETTLE_SCANS = 300;
    private static final int LEAST_SCANS = 1_200;
    private static final int BLOCK_SCANS = 60;
    private static final long FLUSH_NANOS = 250_000_000L;
    private static final long NANOS = 1_000_000_000L;

    private final List<BoardBytes> boards = new ArrayList<>();
    private final List<BoardSession> sessions = new ArrayList<>();
    private final StoredRack records;
    private final RackWatch watch;
    private long nextId;
    private long hostMillis;
    private long flushedNanos;

    FullPath(int channels, Path directory) {
        records = StoredRack.open(directory);
        watch = new RackWatch(records, records, new NoControl(), () -> new UUID(0, ++nextId));
        for (int number = 0; number < channels / BoardBytes.CHANNELS; number++) {
            String name = "b" + number;
            var board = new BoardBytes(number);
            var session = new BoardSession(name, Optional.empty(), records.clock(name), watch, frame -> {});
            boards.add(board);
            sessions.add(session);
            session.opened(now());
            take(session, board.identity());
        }
    }

    /**
     * Measures.
     *
     * @param arguments how many samples each size takes at least; usual: three million
     */
    public static void main(String[] arguments) throws IOException, SQLException {
        ((Logger) LoggerFactory.getLogger("org.flywaydb")).setLevel(Level.WARN);
        long samples = arguments.length > 0 ? Long.parseLong(arguments[0]) : 3_000_000;
        System.out.println("channels  ns at work a sample  ns by the clock  samples/s at work");
        once(64, samples);
        double at64 = 0;
        for (int channels : new int[] {16, 64, 256, 1_024, 4_096}) {
            Spent spent = once(channels, samples);
            at64 = channels == 64 ? spent.workNanos() : at64;
            System.out.printf(
                    "%8d  %19.0f  %15.0f  %17.0f%n",
                    channels, spent.workNanos(), spent.clockNanos(), NANOS / spent.workNanos());
        }
        System.out.printf("48 h of 64 channels at 1 Hz: %.1f s at work%n", at64 * 64 * 48 * 3_600 / NANOS);
        for (RowTable table : RowTable.all()) {
            Spent spent = table.write(samples / 4);
            System.out.printf(
                    "%-22s %6.0f ns at work, %6.0f by the clock a sample: %.1f times the full path%n",
                    table.name(), spent.workNanos(), spent.clockNanos(), spent.workNanos() / at64);
        }
    }

    private static Spent once(int channels, long samples) throws IOException {
        Path directory = Files.createTempDirectory("full-path");
        try {
            var path = new FullPath(channels, directory);
            path.putOn();
            Spent spent = path.run(Math.max(LEAST_SCANS, (int) (samples / channels)));
            path.requireDraining(channels);
            path.close();
            return spent;
        } finally {
            Folders.delete(directory);
        }
    }

    /** Every cell is checked in, seen for a while, and put on its load. */
    void putOn() {
        var cell = new CellCard("A1", Chemistry.LAYERED_OXIDE, 3.0, 25.0, true, false);
        scans(1);
        for (int number = 0; number < boards.size(); number++) {
            for (int channel = 0; channel < BoardBytes.CHANNELS; channel++) {
                watch.checkIn("b" + number, channel, cell, Procedure.careful(), hostMillis);
            }
        }
        scans(CALM_SCANS);
        boards.forEach(BoardBytes::close);
        watch.view().passages().stream().map(PassageView::id).forEach(id -> watch.act(id, Act.PUT_ON));
        scans(SETTLE_SCANS);
    }

    Spent run(int scans) {
        long work = 0;
        long clock = 0;
        long taken = 0;
        for (int done = 0; done < scans; done += BLOCK_SCANS) {
            List<byte[]> bytes =
                    boards.stream().map(board -> board.scans(BLOCK_SCANS)).toList();
            clock -= System.nanoTime();
            work -= workNanos();
            take(bytes, BLOCK_SCANS);
            work += workNanos();
            clock += System.nanoTime();
            taken += (long) BLOCK_SCANS * BoardBytes.CHANNELS * boards.size();
        }
        return new Spent((double) work / taken, (double) clock / taken);
    }

    /** How many points a chart of one cell has. */
    int chart(int channel, int points) {
        UUID id = watch.view().passages().get(channel).id();
        return records.trace(watch.card(id).orElseThrow(), points).size();
    }

    void close() {
        records.close();
    }

    static long workNanos() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private void scans(int count) {
        take(boards.stream().map(board -> board.scans(count)).toList(), count);
    }

    /** Scan by scan, a board after the other, as they come in from ports. */
    private void take(List<byte[]> bytes, int scans) {
        for (int scan = 0; scan < scans; scan++) {
            hostMillis += BoardBytes.INTERVAL_MILLIS;
            HostTime now = now();
            for (int board = 0; board < boards.size(); board++) {
                byte[] all = bytes.get(board);
                int from = (int) ((long) all.length * scan / scans);
                int to = (int) ((long) all.length * (scan + 1) / scans);
                sessions.get(board).accept(all, from, to - from, now);
                sessions.get(board).tick(now);
            }
            if (System.nanoTime() - flushedNanos > FLUSH_NANOS) {
                flushedNanos = System.nanoTime();
                records.flush();
            }
        }
    }

    private void take(BoardSession session, byte[] bytes) {
        session.accept(bytes, 0, bytes.length, now());
    }

    private HostTime now() {
        return new HostTime("bench", hostMillis * 1_000_000, 1_750_000_000_000L + hostMillis, WallQuality.KNOWN);
    }

    /** What was measured is worth nothing unless every cell was drained to the end. */
    private void requireDraining(int channels) {
        long draining = watch.view().passages().stream()
                .filter(passage -> passage.phase() == Phase.DRAIN)
                .count();
        if (draining != channels) {
            throw new IllegalStateException("only " + draining + " of " + channels + " cells are being drained");
        }
    }

    /** Boards that do as they are told; their bytes show it. */
    private static final class NoControl implements BoardControl {
        @Override
        public void setLoad(String board, int channel, boolean closed) {}

        @Override
        public void openAllLoads(String board) {}

        @Override
        public boolean checkLead(String board, int channel) {
            return false;
        }

        @Override
        public boolean blink(String board, int channel, int seconds) {
            return false;
        }
    }
}
