package org.ebbwatch.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.trace.Scans.BOARD;
import static org.ebbwatch.trace.Scans.BOOT;
import static org.ebbwatch.trace.Scans.append;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Path;
import java.util.function.Consumer;
import org.ebbwatch.store.Database;
import org.ebbwatch.store.H2Database;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.LastSeen;
import org.ebbwatch.time.WallQuality;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Where a board was last seen by every clock there is, over restarts of the service. */
class LastSeenTest {

    @TempDir
    Path directory;

    private Database database;

    @BeforeEach
    void openDatabase() {
        database = H2Database.open(directory);
    }

    @AfterEach
    void closeDatabase() {
        database.close();
    }

    @Test
    void a_board_never_seen_was_last_seen_nowhere() {
        run(trace -> assertThat(trace.lastSeen(BOARD)).isEmpty());
    }

    @Test
    void the_last_of_many_is_there_after_a_restart() {
        run(trace -> {
            for (int scan = 1; scan <= 5; scan++) {
                append(trace, scan, scan, 2);
                trace.seen(BOARD, seen(scan, WallQuality.KNOWN));
                trace.flush();
            }
        });
        run(trace -> assertThat(trace.lastSeen(BOARD)).contains(seen(5, WallQuality.KNOWN)));
    }

    @Test
    void a_wall_clock_nobody_set_is_still_not_believed_after_a_restart() {
        run(trace -> trace.seen(BOARD, seen(1, WallQuality.UNSYNCHRONISED)));
        run(trace -> assertThat(trace.lastSeen(BOARD)).contains(seen(1, WallQuality.UNSYNCHRONISED)));
    }

    @Test
    void it_outlives_the_readings_that_were_sealed_and_left_the_tail() throws IOException {
        run(trace -> {
            append(trace, 1, 100, 2);
            trace.seen(BOARD, seen(100, WallQuality.KNOWN));
            trace.sealAll();
        });
        try (var tail = new RandomAccessFile(directory.resolve("readings.tail").toFile(), "rw")) {
            tail.seek(tail.length());
            tail.write(1);
        }
        run(trace -> assertThat(trace.lastScan(BOARD)).isPresent());
        run(trace -> {
            assertThat(trace.recovery().scansTaken() + trace.recovery().scansSealedBefore())
                    .as("the damaged tail was written anew, without what is sealed")
                    .isZero();
            assertThat(trace.lastSeen(BOARD)).contains(seen(100, WallQuality.KNOWN));
        });
    }

    @Test
    void a_torn_one_leaves_the_one_before_and_costs_no_scan() throws IOException {
        run(trace -> {
            append(trace, 1, 1, 2);
            trace.seen(BOARD, seen(1, WallQuality.KNOWN));
            trace.flush();
            append(trace, 2, 2, 2);
            trace.seen(BOARD, seen(2, WallQuality.KNOWN));
        });
        try (var tail = new RandomAccessFile(directory.resolve("readings.tail").toFile(), "rw")) {
            tail.setLength(tail.length() - 1);
        }
        run(trace -> {
            assertThat(trace.lastSeen(BOARD)).contains(seen(1, WallQuality.KNOWN));
            assertThat(trace.lastEventMillis(BOARD)).hasValue(2_000);
        });
    }

    private static LastSeen seen(long scan, WallQuality quality) {
        var host = new HostTime("4f1c-ä", scan * 1_000_000_000L, 1_750_000_000_000L + scan, quality);
        return new LastSeen(1_000 * scan, 1, 0xFFFF_FFFFL - scan, scan, host);
    }

    private void run(Consumer<TraceStore> what) {
        try (TraceStore trace = TraceStore.open(database, directory)) {
            trace.identified(BOOT);
            what.accept(trace);
        }
    }
}
