package org.ebbwatch.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.trace.Scans.BOARD;
import static org.ebbwatch.trace.Scans.BOOT;
import static org.ebbwatch.trace.Scans.append;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.function.Consumer;
import java.util.zip.CRC32C;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.NotBlank;
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

    @Test
    void it_takes_few_bytes_where_the_host_names_its_boot_by_a_uuid() {
        var host = new HostTime(
                "2f0a1c7e-9d1b-4c55-8a65-0123456789ab", 12_345_678_901_234L, 1_750_000_000_000L, WallQuality.KNOWN);
        var record = new SeenRecord("SIM-0", new LastSeen(86_400_000, 1, 86_400_123, 86_400, host));
        ByteBuffer buffer = ByteBuffer.allocate(200);
        record.write(buffer);

        assertThat(buffer.position()).isLessThan(60);
        assertThat(SeenRecord.read(buffer.flip())).isEqualTo(record);
    }

    /** Written by the version before: it is read for ever. */
    @Test
    void a_tail_of_the_version_before_is_read() throws IOException {
        ByteBuffer payload = ByteBuffer.allocate(200).order(ByteOrder.LITTLE_ENDIAN);
        byte[] name = BOARD.getBytes(StandardCharsets.UTF_8);
        payload.put((byte) 3).putInt(name.length).put(name);
        payload.putLong(1_000).putLong(1).putLong(0xFFFF_FFFEL).putLong(1);
        payload.putLong(1_000_000_000L).putLong(1_750_000_000_001L).put((byte) 1);
        payload.put("4f1c-ä".getBytes(StandardCharsets.UTF_8)).flip();
        ByteBuffer file = ByteBuffer.allocate(300).order(ByteOrder.LITTLE_ENDIAN);
        file.put("EBBTAIL1".getBytes(StandardCharsets.US_ASCII));
        file.putShort((short) 0xEBB1).putShort((short) payload.limit());
        CRC32C crc = new CRC32C();
        crc.update(file.array(), 10, 2);
        crc.update(payload.array(), 0, payload.limit());
        file.putInt((int) crc.getValue()).put(payload);
        Files.write(directory.resolve("readings.tail"), Arrays.copyOf(file.array(), file.position()));

        run(trace -> {
            assertThat(trace.recovery().damages()).isEmpty();
            assertThat(trace.lastSeen(BOARD)).contains(seen(1, WallQuality.KNOWN));
        });
    }

    @Property
    void any_last_seen_comes_back_as_it_was(
            @ForAll @NotBlank String board,
            @ForAll long eventMillis,
            @ForAll long bootNumber,
            @ForAll long nanos,
            @ForAll String hostBoot) {
        Assume.that(StandardCharsets.UTF_8.newEncoder().canEncode(board + hostBoot));
        var host = new HostTime(hostBoot, nanos, -nanos, WallQuality.UNSYNCHRONISED);
        var record = new SeenRecord(board, new LastSeen(eventMillis, bootNumber, ~eventMillis, ~bootNumber, host));
        ByteBuffer buffer = ByteBuffer.allocate(100_000);
        record.write(buffer);

        assertThat(SeenRecord.read(buffer.flip())).isEqualTo(record);
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
