package org.ebbwatch.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.store.Database;
import org.ebbwatch.store.H2Database;
import org.ebbwatch.trace.codec.ValueKinds;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A workshop with many boards on one tail. */
class ManyBoardsTest {
    private static final int BOARDS = 24;
    private static final int CHANNELS = 64;
    private static final int SCANS = 1_250;

    @TempDir
    Path directory;

    @Test
    void no_scan_is_written_to_the_tail_again_each_time_another_board_is_sealed() throws IOException {
        int replaced = 0;
        Object file = null;
        try (Database database = H2Database.open(directory);
                TraceStore trace = TraceStore.open(database, directory)) {
            List<BoardBoot> boards = boards(trace);
            var row = new RowBuffer();
            row.bootNumber = 1;
            row.makeRoomFor(CHANNELS);
            for (int scan = 1; scan <= SCANS; scan++) {
                for (int board = 0; board < BOARDS; board++) {
                    row.scan = scan;
                    row.eventMillis = 1_000L * scan + 20_000L * board;
                    trace.append(boards.get(board).board(), row);
                    Object now = fileKey();
                    replaced += now.equals(file) ? 0 : 1;
                    file = now;
                }
            }
            assertThat(sealings(trace)).isGreaterThanOrEqualTo(2L * BOARDS);
            assertThat(trace.health().tailBytes())
                    .as("what is sealed leaves the tail in the end")
                    .isLessThan(60L << 20);
        }
        assertThat(replaced).isBetween(2, 8);
    }

    private static List<BoardBoot> boards(TraceStore trace) {
        List<BoardBoot> boards = new ArrayList<>();
        for (int board = 0; board < BOARDS; board++) {
            boards.add(new BoardBoot("B" + board, 1, ValueKinds.COUNTS_WITHOUT_AMPERES, "{}"));
            trace.identified(boards.get(board));
        }
        return boards;
    }

    private static long sealings(TraceStore trace) {
        long segments = 0;
        for (int board = 0; board < BOARDS; board++) {
            segments += trace.verifyChain("B" + board, 0).segments();
        }
        return segments;
    }

    private Object fileKey() throws IOException {
        return Files.readAttributes(directory.resolve("readings.tail"), BasicFileAttributes.class)
                .fileKey();
    }
}
