package org.ebbwatch.passage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.CellString;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.LastSeen;
import org.ebbwatch.time.WallQuality;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Cells of the rack file that do not fit the board they are on. */
class UnwatchedTest {
    private static final String BOARD = "left";

    @TempDir
    Path folder;

    private long ids;

    @Test
    void a_cell_that_does_not_fit_is_told_and_every_other_one_is_watched() {
        try (StoredRack storage = StoredRack.open(folder)) {
            var watch = new RackWatch(storage, storage, new PlainBoard(), () -> new UUID(0x7000, ++ids));
            watch.expectCell(BOARD, 7, cell("nowhere", Optional.empty()), Procedure.careful());
            watch.expectCell(BOARD, 0, cell("slow", Optional.of(new CellString("pack", 0, 2))), Procedure.careful());
            watch.expectCell(BOARD, 1, cell("sound", Optional.empty()), Procedure.careful());

            watch.identified(BOARD, PlainBoard.identity(2, 2_000));
            watch.scan(BOARD, scan(1));
            watch.scan(BOARD, scan(2));

            assertThat(watch.view().passages()).extracting(it -> it.tag()).containsExactly("sound");
            assertThat(watch.view().unwatched())
                    .satisfiesExactly(
                            line -> assertThat(line)
                                    .isEqualTo("Cell nowhere on channel 7 of board left is NOT watched. "
                                            + "Channel 7 of board left is no cell channel."),
                            line -> assertThat(line)
                                    .startsWith("Cell slow on channel 0 of board left is NOT watched. ")
                                    .contains("2000 ms", "1000 ms"));
        }
    }

    private static CellCard cell(String tag, Optional<CellString> string) {
        return new CellCard(tag, Chemistry.LAYERED_OXIDE, 1.5, 10, false, string.isPresent(), string);
    }

    private static BoardScan scan(long number) {
        var host = new HostTime("host", number * 2_000_000_000L, number * 2_000, WallQuality.KNOWN);
        BoardScan scan =
                new BoardScan(2).stamp(new LastSeen(number * 2_000, 1, number * 2_000, number, host), 0, false);
        for (int channel = 0; channel < 2; channel++) {
            scan.channel(channel, Reading.VOLTS_VALID | Reading.CELSIUS_VALID, 38_000, 21_000, 0);
        }
        return scan;
    }
}
