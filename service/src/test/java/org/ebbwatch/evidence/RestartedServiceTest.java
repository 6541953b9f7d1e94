package org.ebbwatch.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.evidence.Verification.Again;
import org.ebbwatch.evidence.Verification.Judged;
import org.ebbwatch.evidence.json.JsonObject;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.BoardControl;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.RackWatch;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.ChannelIdentity;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.ClockKind;
import org.ebbwatch.rig.message.Converter;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.Scales;
import org.ebbwatch.time.Gap;
import org.ebbwatch.time.GapBasis;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.LastSeen;
import org.ebbwatch.time.WallQuality;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A passage over a power cut: the service stops, and begins again with a board that has other scales. */
class RestartedServiceTest {
    private static final String BOARD = "left";

    @TempDir
    Path folder;

    private long millis;
    private long scanNumber;

    @Test
    void the_bundle_of_a_passage_that_outlived_a_restart_verifies_and_names_both_calibrations() throws IOException {
        UUID id;
        try (StoredRack storage = StoredRack.open(folder.resolve("records"))) {
            RackWatch watch = watch(storage);
            watch.identified(BOARD, identity(1, 100_000));
            scans(watch, 1, 40_000, 3);
            id = watch.checkIn(
                            BOARD,
                            0,
                            new CellCard("A-17", Chemistry.LFP, 1.5, 10, false, false),
                            Procedure.careful(),
                            1_750_000_000_000L)
                    .id();
            scans(watch, 1, 40_000, 30);
            watch.act(id, Act.PUT_ON);
            scans(watch, 1, 39_000, 30);
        }
        try (StoredRack storage = StoredRack.open(folder.resolve("records"))) {
            RackWatch watch = watch(storage);
            for (PassageCard card : storage.openCards()) {
                watch.takeUp(storage.takeUp(card));
            }
            millis += 120_000;
            scanNumber = 0;
            watch.identified(BOARD, identity(2, 200_000));
            watch.gap(BOARD, new Gap(120_000, 240_000, GapBasis.HOST_WALL));
            watch.rebooted(BOARD, 2);
            scans(watch, 2, 19_400, 30);
            watch.act(id, Act.WITHDRAW);
            scans(watch, 2, 19_400, 5);
        }
        Path bundle = write();
        Verification verification = BundleVerifier.verify(bundle);
        assertThat(verification).isInstanceOf(Judged.class);
        assertThat(((Judged) verification).again()).isEqualTo(new Again.Same());
        JsonObject record = JsonObject.read(Bundles.parts(bundle).get("record.json"));
        assertThat(record.objects("calibrations"))
                .extracting(calibration -> List.of(
                        calibration.number("fromSequence"),
                        calibration.number("bootNumber"),
                        calibration.number("nanovoltsPerCount")))
                .containsExactly(List.of(1L, 1L, 100_000L), List.of(64L, 2L, 200_000L));
        assertThat(record.objects("journal"))
                .extracting(line -> line.text("kind"))
                .containsExactly("Acted", "Gap", "Reboot", "Acted");
        assertThat(record.object("outcome").number("readings")).isEqualTo(90);
        assertThat(record.isNull("writtenDown")).isTrue();
        assertThat(record.texts("cautions"))
                .anyMatch(caution -> caution.startsWith("What the readings rest on was told anew 1 time"))
                .anyMatch(caution -> caution.startsWith("A person put the load on"))
                .noneMatch(caution -> caution.startsWith("Readings that were judged"));
    }

    private Path write() throws IOException {
        try (StoredRack storage = StoredRack.open(folder.resolve("records"))) {
            PassageCard card = storage.cards().get(0);
            return new BundleWriter(Origin.current(), Bundles.KEY)
                    .write(PassageRecords.of(storage, card), folder)
                    .file();
        }
    }

    private static RackWatch watch(StoredRack storage) {
        return new RackWatch(storage, storage, new NoControl(), () -> InventedPassage.ID);
    }

    private void scans(RackWatch watch, long boot, int counts, int seconds) {
        for (int i = 0; i < seconds; i++) {
            millis += 1_000;
            var scan = new BoardScan(1);
            var arrival = new HostTime("host", millis * 1_000_000, 1_750_000_000_000L + millis, WallQuality.KNOWN);
            scan.stamp(new LastSeen(millis, boot, millis, ++scanNumber, arrival), 0, false);
            scan.channel(0, Reading.VOLTS_VALID | Reading.CELSIUS_VALID, counts - i % 3, 21_000, 0);
            watch.scan(BOARD, scan);
        }
    }

    private static Identity identity(long boot, long nanovoltsPerCount) {
        var channel = new ChannelIdentity(ChannelRole.CELL, Set.of(Ability.VOLTS, Ability.CELSIUS), 0);
        return new Identity(
                boot,
                ClockKind.CRYSTAL,
                false,
                false,
                false,
                1,
                1_000,
                0,
                new Scales(nanovoltsPerCount, 0, 1_000),
                new Converter(-5_000, 50_000, 400_000, 500, 300_000),
                0,
                "EB-0001",
                "invented 1",
                List.of(channel));
    }

    private static final class NoControl implements BoardControl {
        @Override
        public void openAllLoads(String board) {}

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
