package org.ebbwatch.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.ebbwatch.trace.Scans.BOARD;
import static org.ebbwatch.trace.Scans.BOOT;
import static org.ebbwatch.trace.Scans.append;
import static org.ebbwatch.trace.Scans.expected;
import static org.ebbwatch.trace.Scans.readAll;
import static org.ebbwatch.trace.Scans.row;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import org.ebbwatch.store.Database;
import org.ebbwatch.store.H2Database;
import org.ebbwatch.store.StorageException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A run that ends at the worst moment, and the next one. */
class CrashTest {

    private static final int ROW_BYTES = 8 + 1 + 4 + 8 + 8 + 2 + 2 + 2 * (4 + 2 * 2);

    @TempDir
    Path directory;

    private Path tail;
    private Database database;

    @BeforeEach
    void openDatabase() {
        tail = directory.resolve("readings.tail");
        database = H2Database.open(directory);
    }

    @AfterEach
    void closeDatabase() {
        database.close();
    }

    @Test
    void a_tail_cut_at_any_byte_gives_back_every_whole_scan_and_tells_of_the_torn_one() {
        run(trace -> append(trace, 1, 10, 2));
        byte[] whole = bytes();
        int end = whole.length;

        for (int length = end - 3 * ROW_BYTES; length <= end; length++) {
            write(Arrays.copyOf(whole, length));
            int scans = 10 - (end - length + ROW_BYTES - 1) / ROW_BYTES;
            int torn = (length - (end - 3 * ROW_BYTES)) % ROW_BYTES;
            int before = length - torn;

            run(trace -> {
                assertThat(readAll(trace, 1)).isEqualTo(expected(1, scans, 2, 1));
                assertThat(trace.recovery().scansTaken()).isEqualTo(scans);
                if (torn == 0) {
                    assertThat(trace.recovery().damages()).isEmpty();
                } else {
                    assertThat(trace.recovery().damages()).containsExactly(new TailDamage(before, torn, true));
                }
                append(trace, scans + 1, 12, 2);
            });
            run(trace -> {
                assertThat(trace.recovery().damages()).isEmpty();
                assertThat(readAll(trace, 0)).isEqualTo(expected(1, 12, 2, 0));
            });
        }
    }

    @Test
    void a_tail_cut_in_its_head_gives_back_nothing_and_goes_on() {
        run(trace -> append(trace, 1, 3, 1));
        byte[] whole = bytes();

        for (int length = 0; length < 100; length++) {
            write(Arrays.copyOf(whole, length));
            run(trace -> {
                assertThat(readAll(trace, 0)).isEmpty();
                append(trace, 7, 8, 1);
            });
            run(trace -> assertThat(readAll(trace, 0)).isEqualTo(expected(7, 8, 1, 0)));
        }
    }

    @Test
    void a_flipped_byte_in_the_middle_costs_one_scan_only() {
        run(trace -> append(trace, 1, 10, 2));
        byte[] whole = bytes();
        for (int at = whole.length - 5 * ROW_BYTES; at < whole.length - 4 * ROW_BYTES; at++) {
            byte[] flipped = whole.clone();
            flipped[at] ^= (byte) 0x5A;
            write(flipped);

            run(trace -> {
                assertThat(readAll(trace, 0))
                        .hasSize(9)
                        .doesNotContain(expected(6, 6, 2, 0).get(0));
                assertThat(trace.recovery().damages())
                        .containsExactly(new TailDamage(whole.length - 5 * ROW_BYTES, ROW_BYTES, false));
            });
        }
    }

    @Test
    void zeros_after_the_end_are_cut_off() {
        run(trace -> append(trace, 1, 4, 2));
        byte[] whole = bytes();
        write(Arrays.copyOf(whole, whole.length + 300_000));

        run(trace -> {
            assertThat(readAll(trace, 0)).isEqualTo(expected(1, 4, 2, 0));
            assertThat(trace.recovery().damages()).containsExactly(new TailDamage(whole.length, 300_000, true));
            assertThat(trace.health().tailBytes()).isLessThanOrEqualTo(whole.length);
        });
    }

    @Test
    void a_crash_between_sealing_and_clearing_up_doubles_nothing() {
        byte[][] before = new byte[1][];
        run(trace -> {
            append(trace, 1, 700, 2);
            trace.flush();
            before[0] = bytes();
            trace.sealAll();
            append(trace, 701, 702, 2);
        });
        byte[] after = bytes();
        assertThat(after.length).isGreaterThan(before[0].length);

        write(before[0]);
        run(trace -> {
            assertThat(readAll(trace, 1)).isEqualTo(expected(1, 700, 2, 1));
            assertThat(trace.recovery()).isEqualTo(new TailRecovery(0, 700, List.of()));
            assertThat(trace.verifyChain(BOARD, 1).isWhole()).isTrue();
        });
        write(after);
        run(trace -> {
            assertThat(readAll(trace, 1)).isEqualTo(expected(1, 702, 2, 1));
            assertThat(trace.recovery()).isEqualTo(new TailRecovery(2, 700, List.of()));
        });
    }

    @Test
    void a_crash_before_the_segments_were_committed_loses_nothing() throws SQLException {
        run(trace -> append(trace, 1, 1300, 2));
        try (Connection connection = database.dataSource().getConnection();
                Statement statement = connection.createStatement()) {
            statement.executeUpdate("delete from segment where first_scan = 601");
        }

        run(trace -> {
            assertThat(readAll(trace, 0)).isEqualTo(expected(1, 1300, 2, 0));
            assertThat(trace.verifyChain(BOARD, 0).isWhole()).isTrue();
            assertThat(trace.verifyChain(BOARD, 0).segments()).isEqualTo(2);
        });
    }

    @Test
    void a_half_written_next_tail_is_thrown_away() throws IOException {
        run(trace -> append(trace, 1, 5, 1));
        Files.write(directory.resolve("readings.tail.next"), new byte[1000]);

        run(trace -> assertThat(readAll(trace, 0)).isEqualTo(expected(1, 5, 1, 0)));
    }

    @Test
    void a_file_that_is_no_tail_is_refused_and_left_alone() {
        byte[] letter = "Dear all, this is no tail".getBytes(StandardCharsets.UTF_8);
        write(letter);

        assertThatThrownBy(() -> TraceStore.open(database, directory))
                .isInstanceOf(StorageException.class)
                .hasMessageContaining("readings.tail");
        assertThat(bytes()).isEqualTo(letter);
    }

    @Test
    void a_long_tail_is_replaced_by_one_with_the_open_scans_of_every_board() {
        run(trace -> {
            trace.identified(new BoardBoot("SLOW", 3, BOOT.kinds(), "slow"));
            trace.append("SLOW", row(3, 1, 1000, 5));
            long longest = 0;
            for (int scan = 1; scan <= 20_000; scan++) {
                trace.append(BOARD, row(1, scan, 10L * scan, 64));
                longest = Math.max(longest, trace.health().tailBytes());
            }
            assertThat(longest).isBetween(4L << 20, 9L << 20);
            assertThat(bytes().length).isLessThan(9 << 20);
        });
        run(trace -> {
            assertThat(readAll(trace, 63)).hasSize(20_000);
            assertThat(trace.lastScan("SLOW")).contains(new LastScan(3, 1, 1000));
            assertThat(trace.verifyChain(BOARD, 63).isWhole()).isTrue();
        });
    }

    private void run(Consumer<TraceStore> steps) {
        try (TraceStore trace = TraceStore.open(database, directory)) {
            trace.identified(BOOT);
            steps.accept(trace);
        }
    }

    private byte[] bytes() {
        try {
            return Files.readAllBytes(tail);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void write(byte[] bytes) {
        try {
            Files.write(tail, bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
