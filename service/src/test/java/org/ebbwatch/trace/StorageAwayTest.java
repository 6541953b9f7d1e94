package org.ebbwatch.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.ebbwatch.trace.Scans.BOARD;
import static org.ebbwatch.trace.Scans.BOOT;
import static org.ebbwatch.trace.Scans.append;
import static org.ebbwatch.trace.Scans.expected;
import static org.ebbwatch.trace.Scans.readAll;

import java.io.IOException;
import java.lang.reflect.Proxy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.ebbwatch.store.Database;
import org.ebbwatch.store.H2Database;
import org.ebbwatch.store.StorageException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The watch goes on while the database, the disk, or both are away. */
class StorageAwayTest {

    private static final long SECOND = 1_000_000_000L;
    private static final long QUARTER = SECOND / 4;

    @TempDir
    Path directory;

    private Path tails;
    private H2Database h2;
    private boolean databaseAway;
    private boolean forceAway;
    private TraceStore trace;
    private long tickedNanos = -QUARTER;

    @BeforeEach
    void openTrace() throws IOException {
        tails = Files.createDirectory(directory.resolve("tails"));
        h2 = H2Database.open(directory.resolve("database"));
        trace = TraceStore.open(new Detachable(), tails);
        trace.identified(BOOT);
        tickUntil(0);
    }

    @AfterEach
    void closeDatabase() {
        h2.close();
    }

    @Test
    void segments_wait_while_the_database_is_away_and_are_stored_when_it_is_back() {
        append(trace, 1, 50, 2);
        databaseAway = true;
        append(trace, 51, 2000, 2);
        trace.flush();

        assertThat(trace.health().segmentsWaiting()).isEqualTo(6);
        assertThat(trace.health().databaseTrouble()).hasValue("connection refused");
        assertThat(trace.health().tailTrouble()).isEmpty();

        databaseAway = false;
        tickUntil(2 * SECOND);
        assertThat(trace.health().segmentsWaiting()).isZero();
        assertThat(trace.health().databaseTrouble()).isEmpty();
        assertThat(readAll(trace, 1)).isEqualTo(expected(1, 2000, 2, 1));
        trace.close();
    }

    @Test
    void after_a_long_time_away_segments_follow_some_at_a_time_and_scans_are_never_torn_apart() {
        databaseAway = true;
        append(trace, 1, 6_001, 100);
        assertThat(trace.health().segmentsWaiting()).isEqualTo(1_000);

        databaseAway = false;
        tickUntil(7 * SECOND / 4);
        assertThat(trace.health().segmentsWaiting())
                .as("256, and the rest of their ten minutes")
                .isEqualTo(700);
        assertThat(readAll(trace, 99)).isEqualTo(expected(1, 6_001, 100, 99));
        trace.sealAll();
        assertThat(trace.health().segmentsWaiting()).isZero();
        assertThat(readAll(trace, 99)).isEqualTo(expected(1, 6_001, 100, 99));
        trace.close();
    }

    @Test
    void waiting_segments_are_read_and_verified_like_stored_ones() {
        append(trace, 1, 700, 2);
        databaseAway = true;
        append(trace, 701, 1900, 2);
        databaseAway = false;

        assertThat(trace.health().segmentsWaiting()).isEqualTo(4);
        assertThat(readAll(trace, 0)).isEqualTo(expected(1, 1900, 2, 0));
        ChainReport report = trace.verifyChain(BOARD, 0);
        assertThat(report.isWhole()).isTrue();
        assertThat(report.samples()).isEqualTo(1800);
        trace.close();
    }

    @Test
    void a_run_that_ends_while_the_database_is_away_leaves_all_in_the_tail() {
        databaseAway = true;
        append(trace, 1, 2000, 2);
        trace.close();
        databaseAway = false;

        try (TraceStore next = TraceStore.open(h2, tails)) {
            assertThat(next.recovery().scansTaken()).isEqualTo(2000);
            assertThat(readAll(next, 1)).isEqualTo(expected(1, 2000, 2, 1));
            assertThat(next.verifyChain(BOARD, 1).isWhole()).isTrue();
        }
    }

    @Test
    void a_tail_that_fails_is_written_anew_from_memory() {
        append(trace, 1, 700, 2);
        trace.tail.close();
        append(trace, 701, 800, 2);
        trace.flush();

        assertThat(trace.health().tailTrouble()).isEmpty();
        trace.close();
        try (TraceStore next = TraceStore.open(h2, tails)) {
            assertThat(readAll(next, 0)).isEqualTo(expected(1, 800, 2, 0));
        }
    }

    @Test
    void a_flush_that_cannot_be_promised_is_refused_and_memory_carries_on() throws IOException {
        append(trace, 1, 10, 2);
        Files.delete(tails.resolve("readings.tail"));
        Files.delete(tails);
        trace.tail.close();
        append(trace, 11, 20, 2);

        assertThatThrownBy(trace::flush).isInstanceOf(StorageException.class).hasMessageContaining("not safe on disk");
        tickUntil(2 * SECOND);
        assertThat(trace.health().tailTrouble()).isPresent();
        assertThat(readAll(trace, 1)).isEqualTo(expected(1, 20, 2, 1));
        String told = trace.health().tailTrouble().get();
        trace.tick(3 * SECOND + SECOND / 2);
        assertThat(trace.health().tailTrouble())
                .as("the same trouble is told in the same words, however often it is tried")
                .hasValue(told);

        Files.createDirectory(tails);
        tickUntil(8 * SECOND);
        assertThat(trace.health().tailTrouble()).isEmpty();
        trace.close();
        try (TraceStore next = TraceStore.open(h2, tails)) {
            assertThat(readAll(next, 1)).isEqualTo(expected(1, 20, 2, 1));
        }
    }

    @Test
    void a_broken_tail_is_not_replaced_while_its_scans_are_nowhere_else() {
        databaseAway = true;
        append(trace, 1, 700, 2);
        trace.flush();
        trace.tail.close();
        append(trace, 701, 710, 2);
        assertThatThrownBy(trace::flush).isInstanceOf(StorageException.class);

        databaseAway = false;
        trace.flush();
        trace.close();
        try (TraceStore next = TraceStore.open(h2, tails)) {
            assertThat(readAll(next, 0)).isEqualTo(expected(1, 710, 2, 0));
        }
    }

    @Test
    void a_tail_is_not_replaced_before_its_segments_are_forced_to_disk() {
        append(trace, 1, 700, 2);
        forceAway = true;
        trace.tail.close();
        append(trace, 701, 710, 2);
        assertThatThrownBy(trace::flush).isInstanceOf(StorageException.class);
        assertThat(trace.health().databaseTrouble()).hasValue("disk full");

        forceAway = false;
        trace.flush();
        assertThat(trace.health().databaseTrouble()).isEmpty();
        trace.close();
    }

    @Test
    void readings_are_on_disk_two_seconds_after_they_were_taken() throws IOException {
        long before = Files.size(tails.resolve("readings.tail"));
        append(trace, 1, 1, 2);
        tickUntil(SECOND);
        assertThat(Files.size(tails.resolve("readings.tail")))
                .as("a card that wears with every write is not written to at once")
                .isEqualTo(before);
        tickUntil(2 * SECOND);

        assertThat(Files.size(tails.resolve("readings.tail"))).isGreaterThan(before);
        trace.close();
    }

    @Test
    void readings_that_come_all_the_time_wait_two_seconds_at_most() throws IOException {
        long onDisk = 0;
        for (int quarter = 1; quarter <= 80; quarter++) {
            append(trace, quarter, quarter, 2);
            long before = Files.size(tails.resolve("readings.tail"));
            trace.tick(quarter * QUARTER);
            if (Files.size(tails.resolve("readings.tail")) > before) {
                onDisk = quarter;
            }
            assertThat(quarter - onDisk).as("quarters of a second").isLessThan(8);
        }
        trace.close();
    }

    @Test
    void an_interrupted_thread_keeps_writing() {
        try {
            Thread.currentThread().interrupt();
            for (int scan = 1; scan <= 700; scan++) {
                append(trace, scan, scan, 64);
                trace.flush();
            }
            trace.tail.close();
            trace.flush();

            assertThat(trace.health().tailTrouble()).isEmpty();
            assertThat(trace.health().databaseTrouble()).isEmpty();
            assertThat(readAll(trace, 63)).isEqualTo(expected(1, 700, 64, 63));
        } finally {
            assertThat(Thread.interrupted()).isTrue();
        }
        trace.close();
    }

    /** Four ticks a second, as in service. */
    private void tickUntil(long nanos) {
        while (tickedNanos < nanos) {
            tickedNanos += QUARTER;
            trace.tick(tickedNanos);
        }
    }

    /** The database, which can be taken away. */
    private final class Detachable implements Database {

        @Override
        public DataSource dataSource() {
            return (DataSource) Proxy.newProxyInstance(
                    getClass().getClassLoader(), new Class<?>[] {DataSource.class}, (proxy, method, arguments) -> {
                        if (databaseAway) {
                            throw new SQLException("connection refused");
                        }
                        return method.invoke(h2.dataSource(), arguments);
                    });
        }

        @Override
        public void force() throws SQLException {
            if (forceAway) {
                throw new SQLException("disk full");
            }
            h2.force();
        }

        @Override
        public void close() {
            h2.close();
        }
    }
}
