package org.ebbwatch.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.ebbwatch.trace.Scans.BOARD;
import static org.ebbwatch.trace.Scans.BOOT;
import static org.ebbwatch.trace.Scans.append;
import static org.ebbwatch.trace.Scans.expected;
import static org.ebbwatch.trace.Scans.read;
import static org.ebbwatch.trace.Scans.readAll;
import static org.ebbwatch.trace.Scans.row;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import org.ebbwatch.store.Database;
import org.ebbwatch.trace.codec.DamagedSegmentException;
import org.ebbwatch.trace.codec.Sha256;
import org.ebbwatch.trace.codec.ValueKind;
import org.ebbwatch.trace.codec.ValueKinds;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What every database must do for the trace. */
abstract class TraceStoreContract {

    @TempDir
    Path directory;

    private Database database;
    private TraceStore trace;

    /** An empty database; the contract closes it. */
    abstract Database open();

    @BeforeEach
    void openTrace() {
        database = open();
        trace = TraceStore.open(database, directory);
        trace.identified(BOOT);
    }

    @AfterEach
    void closeTrace() {
        trace.close();
        database.close();
    }

    @Nested
    class Reading {

        @Test
        void scans_come_back_in_order_over_segments_and_tail_without_a_seam() {
            append(trace, 1, 1500, 3);

            for (int channel = 0; channel < 3; channel++) {
                assertThat(readAll(trace, channel)).isEqualTo(expected(1, 1500, 3, channel));
            }
            assertThat(trace.verifyChain(BOARD, 0).samples()).isEqualTo(1200);
        }

        @Test
        void a_range_takes_its_beginning_and_leaves_its_end() {
            append(trace, 1, 1500, 2);

            assertThat(read(trace, 1, 1000, 2000)).isEqualTo(expected(1, 1, 2, 1));
            assertThat(read(trace, 1, 1001, 2001)).isEqualTo(expected(2, 2, 2, 1));
            assertThat(read(trace, 1, 599_000, 1_300_000)).isEqualTo(expected(599, 1299, 2, 1));
            assertThat(read(trace, 1, 1_400_000, 1_400_001)).isEqualTo(expected(1400, 1400, 2, 1));
            assertThat(read(trace, 1, 2_000_000, 3_000_000)).isEmpty();
            assertThat(read(trace, 1, 5000, 5000)).isEmpty();
        }

        @Test
        void channels_and_boards_nobody_knows_have_no_samples() {
            append(trace, 1, 10, 2);

            assertThat(readAll(trace, 2)).isEmpty();
            trace.read("nobody", 0, 0, Long.MAX_VALUE, (scan, at, state, v, c, a) -> {
                throw new AssertionError("a sample of nobody");
            });
            assertThat(trace.lastScan("nobody")).isEmpty();
            assertThat(trace.lastEventMillis("nobody")).isEmpty();
        }

        @Test
        void a_stretch_is_told_where_boot_amperes_or_identity_change() {
            BoardBoot calibrated = new BoardBoot(BOARD, 2, ValueKinds.COUNTS, "{\"nanovoltsPerCount\": 100100}");
            trace.append(BOARD, row(1, 1, 1000, 2));
            trace.append(BOARD, row(1, 2, 2000, 2));
            trace.append(BOARD, row(2, 1, 3000, 2));
            RowBuffer measured = row(2, 2, 4000, 2);
            measured.withAmperes = true;
            trace.append(BOARD, measured);
            trace.identified(calibrated);
            trace.append(BOARD, row(2, 3, 5000, 2));

            List<String> told = new ArrayList<>();
            trace.read(BOARD, 1, 0, Long.MAX_VALUE, new SampleVisitor() {
                @Override
                public void stretch(Stretch stretch) {
                    BoardBoot boot = trace.boot(stretch.identityHash()).orElseThrow();
                    told.add(stretch.bootNumber() + " " + stretch.kinds().amperes() + " " + boot.identity());
                }

                @Override
                public void sample(long scan, long eventMillis, int state, int volts, int celsius, int amperes) {
                    told.add(scan + " " + amperes);
                }
            });

            assertThat(told)
                    .containsExactly(
                            "1 ABSENT " + BOOT.identity(),
                            "1 0",
                            "2 0",
                            "2 ABSENT " + BOOT.identity(),
                            "1 0",
                            "2 COUNTS " + BOOT.identity(),
                            "2 -1",
                            "2 ABSENT " + calibrated.identity(),
                            "3 0");
        }

        @Test
        void float_bits_come_back_bit_for_bit() {
            ValueKinds floats = new ValueKinds(ValueKind.FLOAT32, ValueKind.FLOAT32, ValueKind.ABSENT);
            trace.identified(new BoardBoot("FLOATS", 0, floats, "{}"));
            int[] patterns = {0x7FC00001, 0xFFFFFFFF, Float.floatToRawIntBits(3.4E38f)};
            RowBuffer row = row(0, 1, 1, 3);
            row.volts = patterns;
            trace.append("FLOATS", row);
            trace.sealAll();

            for (int channel = 0; channel < 3; channel++) {
                int pattern = patterns[channel];
                trace.read("FLOATS", channel, 0, 2, (scan, at, state, volts, celsius, amperes) -> assertThat(volts)
                        .isEqualTo(pattern));
            }
            assertThat(trace.verifyChain("FLOATS", 2).samples()).isEqualTo(1);
        }

        @Test
        void another_thread_always_sees_a_beginning_of_the_trace_without_a_hole() throws Exception {
            AtomicBoolean ended = new AtomicBoolean();
            List<Throwable> failures = new ArrayList<>();
            Thread other = new Thread(
                    () -> {
                        try {
                            boolean last;
                            do {
                                last = ended.get();
                                long[] next = {1};
                                trace.read(BOARD, 0, 0, Long.MAX_VALUE, (scan, at, state, v, c, a) -> assertThat(scan)
                                        .isEqualTo(next[0]++));
                            } while (!last);
                        } catch (RuntimeException | Error e) {
                            failures.add(e);
                        }
                    },
                    "other");
            other.start();
            append(trace, 1, 9000, 2);
            ended.set(true);
            other.join();

            assertThat(failures).isEmpty();
        }
    }

    @Nested
    class Sealing {

        @Test
        void ten_minutes_make_a_segment_of_each_channel() throws SQLException {
            append(trace, 1, 600, 4);
            assertThat(count("segment")).isZero();

            append(trace, 601, 601, 4);
            assertThat(count("segment")).isEqualTo(4);
        }

        @Test
        void a_fast_board_makes_a_segment_of_4096_scans() throws SQLException {
            for (int scan = 1; scan <= 4097; scan++) {
                trace.append(BOARD, row(1, scan, 10L * scan, 1));
            }

            assertThat(count("segment")).isEqualTo(1);
            assertThat(trace.verifyChain(BOARD, 0).samples()).isEqualTo(4096);
        }

        @Test
        void boots_are_kept_with_the_first_segment_that_needs_them() {
            append(trace, 1, 2, 1);
            trace.append(BOARD, row(2, 1, 3000, 1));
            trace.sealAll();

            assertThat(trace.boots(BOARD)).containsExactly(BOOT, BOOT.after(2));
            reopen();
            assertThat(trace.boot(BOOT.identityHash())).contains(BOOT);
            assertThat(trace.boot(Sha256.of("unknown"))).isEmpty();
        }

        @Test
        void a_board_that_cannot_count_its_starts_may_begin_again_with_scan_one() {
            trace.append(BOARD, row(0, 1, 1000, 1));
            trace.sealAll();
            trace.append(BOARD, row(0, 1, 2000, 1));
            trace.sealAll();

            assertThat(readAll(trace, 0)).hasSize(2);
        }

        @Test
        void the_last_scan_is_known_over_restarts_from_tail_and_from_segments() {
            append(trace, 1, 700, 2);
            assertThat(trace.lastScan(BOARD)).contains(new LastScan(1, 700, 700_000));

            reopen();
            assertThat(trace.lastEventMillis(BOARD)).hasValue(700_000);

            trace.sealAll();
            reopen();
            assertThat(trace.lastScan(BOARD)).contains(new LastScan(1, 700, 700_000));
        }
    }

    @Nested
    class Refusing {

        @Test
        void a_board_that_has_not_said_who_it_is_is_refused() {
            assertThatThrownBy(() -> trace.append("other", row(1, 1, 1, 1))).isInstanceOf(IllegalStateException.class);
        }

        @Test
        void event_time_that_does_not_rise_is_refused_even_after_a_restart() {
            append(trace, 1, 5, 1);
            trace.sealAll();
            reopen();
            trace.identified(BOOT);

            assertThatThrownBy(() -> trace.append(BOARD, row(1, 6, 5000, 1)))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("5000");
            append(trace, 6, 6, 1);
            assertThat(readAll(trace, 0)).isEqualTo(expected(1, 6, 1, 0));
        }

        @Test
        void amperes_of_a_board_that_said_it_has_none_are_refused() {
            trace.identified(new BoardBoot("NO-AMPERES", 1, ValueKinds.COUNTS_WITHOUT_AMPERES, "{}"));
            RowBuffer row = row(1, 1, 1, 1);
            row.withAmperes = true;

            assertThatThrownBy(() -> trace.append("NO-AMPERES", row)).isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Nested
    class Verifying {

        @Test
        void an_untouched_chain_is_whole_over_a_restart() {
            append(trace, 1, 1300, 2);
            reopen();
            trace.identified(BOOT);
            append(trace, 1301, 2500, 2);

            ChainReport report = trace.verifyChain(BOARD, 1);
            assertThat(report.isWhole()).isTrue();
            assertThat(report.segments()).isEqualTo(4);
            assertThat(report.samples()).isEqualTo(2400);
        }

        @Test
        void a_segment_taken_out_is_missed() throws SQLException {
            append(trace, 1, 1900, 1);
            execute("delete from segment where first_scan = 601");

            assertThat(trace.verifyChain(BOARD, 0).faults())
                    .containsExactly("segment at 1201000: does not follow from the segment before it");
        }

        @Test
        void a_segment_put_in_the_place_of_another_is_found() throws SQLException {
            append(trace, 1, 1900, 2);
            execute("update segment set body = (select body from segment where channel = 1 and first_scan = 601),"
                    + " hash = (select hash from segment where channel = 1 and first_scan = 601)"
                    + " where channel = 0 and first_scan = 601");

            assertThat(trace.verifyChain(BOARD, 0).faults()).hasSize(3).anyMatch(fault -> fault.contains("channel=1"));
        }

        @Test
        void a_damaged_segment_is_named_and_never_read_as_silence() throws SQLException {
            append(trace, 1, 1900, 1);
            execute("update segment set body = hash where first_scan = 601");

            assertThat(trace.verifyChain(BOARD, 0).faults())
                    .anyMatch(fault -> fault.startsWith("segment at 601000: the checksum"));
            assertThatThrownBy(() -> readAll(trace, 0)).isInstanceOf(DamagedSegmentException.class);
        }

        @Test
        void a_visitor_may_pass_over_a_damaged_segment_knowingly() throws SQLException {
            append(trace, 1, 1900, 1);
            execute("update segment set body = hash where first_scan = 601");
            List<Long> damaged = new ArrayList<>();
            List<Long> scans = new ArrayList<>();

            trace.read(BOARD, 0, 0, Long.MAX_VALUE, new SampleVisitor() {
                @Override
                public void sample(long scan, long at, int state, int volts, int celsius, int amperes) {
                    scans.add(scan);
                }

                @Override
                public void damaged(long firstEventMillis, DamagedSegmentException damage) {
                    damaged.add(firstEventMillis);
                }
            });

            assertThat(damaged).containsExactly(601_000L);
            assertThat(scans).hasSize(1300).doesNotContain(601L, 1200L).contains(600L, 1201L);
        }
    }

    private void reopen() {
        trace.close();
        trace = TraceStore.open(database, directory);
    }

    private int count(String table) throws SQLException {
        try (Connection connection = database.dataSource().getConnection();
                Statement statement = connection.createStatement();
                var row = statement.executeQuery("select count(*) from " + table)) {
            row.next();
            return row.getInt(1);
        }
    }

    private void execute(String sql) throws SQLException {
        try (Connection connection = database.dataSource().getConnection();
                Statement statement = connection.createStatement()) {
            assertThat(statement.executeUpdate(sql)).isPositive();
        }
    }
}
