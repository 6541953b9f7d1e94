package org.ebbwatch.passage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.CellString;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.ChannelIdentity;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.ClockKind;
import org.ebbwatch.rig.message.Converter;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.Scales;
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
            var watch = new RackWatch(storage, storage, new NoControl(), () -> new UUID(0x7000, ++ids));
            watch.expectCell(BOARD, 7, cell("nowhere", Optional.empty()), Procedure.careful());
            watch.expectCell(BOARD, 0, cell("slow", Optional.of(new CellString("pack", 0, 2))), Procedure.careful());
            watch.expectCell(BOARD, 1, cell("sound", Optional.empty()), Procedure.careful());

            watch.identified(BOARD, identity());
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

    private static Identity identity() {
        var channel = new ChannelIdentity(ChannelRole.CELL, Set.of(Ability.VOLTS, Ability.CELSIUS), 0);
        return new Identity(
                1,
                ClockKind.CRYSTAL,
                false,
                false,
                false,
                1,
                2_000,
                0,
                new Scales(100_000, 0, 1_000),
                new Converter(-5_000, 50_000, 400_000, 500, 300_000),
                0,
                "EB-0001",
                "invented 1",
                List.of(channel, channel));
    }

    private static final class NoControl implements BoardControl {
        @Override
        public void setLoad(String board, int channel, boolean closed) {}

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
