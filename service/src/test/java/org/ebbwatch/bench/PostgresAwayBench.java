package org.ebbwatch.bench;

import com.github.f4b6a3.uuid.UuidCreator;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.ebbwatch.acquire.PortAddress;
import org.ebbwatch.acquire.SystemHostClock;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.JournalTaker;
import org.ebbwatch.passage.KeptEntry;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.postgres.Postgres;
import org.ebbwatch.rack.RunningRack;
import org.ebbwatch.rack.RunningRack.BoardPort;
import org.ebbwatch.store.PostgresLogin;
import org.ebbwatch.store.Records;

/**
 * What becomes of a rack of 64 channels at ten scans a second, whose cells get hot one after another, while its database is away.
 * Arguments: minutes away (10), {@code hangs} or {@code killed}. See docs/benchmarks/postgresql.md.
 */
final class PostgresAwayBench {
    private static final String BOARD = "many";
    private static final long CALM_MILLIS = 15_000;
    private static final long INTERVAL_MILLIS = 100;
    private static final long LOOK_MILLIS = 5;
    private static final int ATTEMPTS = 60;

    private final Postgres postgres = Postgres.start(null);
    private final PostgresLogin login = postgres.database();
    private final Path folder = Files.createTempDirectory("ebbwatch-postgres");

    private PostgresAwayBench() throws IOException {}

    public static void main(String[] arguments) throws Exception {
        long minutes = arguments.length > 0 ? Long.parseLong(arguments[0]) : 10;
        boolean killed = arguments.length > 1 && arguments[1].equals("killed");
        new PostgresAwayBench().run(minutes, killed);
        System.exit(0);
    }

    private void run(long minutes, boolean killed) throws IOException, InterruptedException {
        StoredRack storage = StoredRack.of(Records.inPostgres(folder, login, ATTEMPTS));
        long calm;
        long away;
        long queueBytes;
        long tailBytes;
        long caughtUpMillis;
        try (ManyChannels board = new ManyChannels();
                RunningRack rack = rack(board, storage)) {
            rack.start();
            while (rack.with(watch -> watch.eventMillis(BOARD)) < 0) {
                Thread.sleep(LOOK_MILLIS);
            }
            calm = longestPause(rack, CALM_MILLIS);
            if (killed) {
                postgres.kill();
            } else {
                postgres.hangUp();
            }
            away = longestPause(rack, minutes * 60_000);
            queueBytes = Files.size(folder.resolve("facts.queue"));
            tailBytes = Files.size(folder.resolve("readings.tail"));
            long back = System.nanoTime();
            if (killed) {
                postgres.startAgain();
            } else {
                postgres.goOn();
            }
            while (rack.with(watch -> storage.trouble()).isPresent()) {
                longestPause(rack, 50);
            }
            caughtUpMillis = (System.nanoTime() - back) / 1_000_000;
        }
        try (StoredRack again = StoredRack.of(Records.inPostgres(folder, login, ATTEMPTS))) {
            long scans = 0;
            long missing = 0;
            int otherwise = 0;
            int events = 0;
            for (PassageCard card : again.cards()) {
                var count = new ScanCount();
                again.read(card, count);
                scans += count.scans;
                missing += count.missing;
                events += again.recorded(card).size();
                otherwise += again.refold(card).events().equals(again.recorded(card)) ? 0 : 1;
            }
            System.out.printf(
                    Locale.ROOT,
                    "| %s %d min | %d ms | %d ms | %.0f KiB | %.1f MiB | %.1f s | %d | %d | %d | %d |%n",
                    killed ? "killed" : "hung up",
                    minutes,
                    calm,
                    away,
                    queueBytes / 1024.0,
                    tailBytes / 1024.0 / 1024.0,
                    caughtUpMillis / 1000.0,
                    scans,
                    missing,
                    events,
                    otherwise);
        } finally {
            postgres.close();
        }
    }

    private static RunningRack rack(ManyChannels board, StoredRack storage) {
        var rack = new RunningRack(
                List.of(new BoardPort(BOARD, Optional.empty(), new PortAddress.Tcp("127.0.0.1", board.port())::port)),
                storage,
                NightHours.usual(ZoneOffset.UTC),
                List.of(),
                Optional.empty(),
                UuidCreator::getTimeOrderedEpoch,
                new SystemHostClock());
        for (int channel = 0; channel < ManyChannels.CHANNELS; channel++) {
            var cell = new CellCard("cell-" + channel, Chemistry.LAYERED_OXIDE, 2, 4.7, false, false);
            rack.expect(BOARD, channel, cell, Procedure.careful());
        }
        return rack;
    }

    /** The longest time in which the rack took no scan. */
    private long longestPause(RunningRack rack, long millis) throws InterruptedException {
        long until = System.nanoTime() + millis * 1_000_000;
        long longest = 0;
        long seen = rack.with(watch -> watch.eventMillis(BOARD));
        long since = System.nanoTime();
        while (System.nanoTime() < until) {
            Thread.sleep(LOOK_MILLIS);
            long now = rack.with(watch -> watch.eventMillis(BOARD));
            if (now != seen) {
                longest = Math.max(longest, (System.nanoTime() - since) / 1_000_000);
                seen = now;
                since = System.nanoTime();
            }
        }
        return longest;
    }

    /** Counts what a channel read, and what is missing in between. */
    private static final class ScanCount implements JournalTaker {
        private long scans;
        private long missing;
        private long lastMillis = -1;

        @Override
        public boolean scan(long sequence, Entry.Scan scan) {
            missing += lastMillis < 0 ? 0 : (scan.eventMillis() - lastMillis) / INTERVAL_MILLIS - 1;
            lastMillis = scan.eventMillis();
            scans++;
            return true;
        }

        @Override
        public boolean entry(long sequence, KeptEntry entry) {
            return true;
        }
    }
}
