package org.ebbwatch.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.calibration.Meter;
import org.ebbwatch.evidence.Verification.Again;
import org.ebbwatch.evidence.Verification.Judged;
import org.ebbwatch.evidence.json.JsonObject;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.BoardControl;
import org.ebbwatch.passage.CalibrationDesk;
import org.ebbwatch.passage.CalibrationReply.Kept;
import org.ebbwatch.passage.CalibrationReply.Running;
import org.ebbwatch.passage.CalibrationSpot;
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
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.LastSeen;
import org.ebbwatch.time.WallQuality;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A cell on a channel that was calibrated before, and whose calibration is withdrawn on the way. */
class CalibratedBundleTest {
    private static final String BOARD = "left";

    @TempDir
    Path folder;

    private long millis;
    private long nextId;

    @Test
    void the_bundle_states_the_calibration_and_verifies() throws IOException {
        try (StoredRack storage = StoredRack.open(folder.resolve("records"))) {
            var watch = new RackWatch(storage, storage, new NoControl(), this::id);
            var desk = new CalibrationDesk(watch, storage, this::id, this::now);
            watch.expect(BOARD);
            watch.identified(BOARD, identity());
            scans(watch, 1, 0);
            UUID calibration = calibrate(watch, desk);
            UUID passage = watch.checkIn(
                            BOARD,
                            0,
                            new CellCard("A-17", Chemistry.LFP, 1.5, 10, false, false),
                            Procedure.careful(),
                            now().wallMillis())
                    .id();
            scans(watch, 20, 33_660);
            desk.withdrawCalibration(calibration, "Anna", "The meter's battery was low.");
            scans(watch, 20, 33_660);
            watch.act(passage, Act.WITHDRAW);
        }
        Path bundle = write();
        Verification verification = BundleVerifier.verify(bundle);
        assertThat(verification).isInstanceOf(Judged.class);
        assertThat(((Judged) verification).again()).isEqualTo(new Again.Same());

        JsonObject record = JsonObject.read(Bundles.parts(bundle).get("record.json"));
        List<JsonObject> bases = record.objects("calibrations");
        assertThat(bases).hasSize(2);
        JsonObject calibration = bases.get(0).object("calibration");
        assertThat(calibration.text("madeUtc")).startsWith("2025-06-15T");
        assertThat(calibration.text("by")).isEqualTo("Anna");
        assertThat(calibration.object("meter").text("name")).isEqualTo("bench meter");
        assertThat(calibration.object("correction").decimal("gain")).isCloseTo(1 / 1.02, within(1e-5));
        assertThat(calibration.text("sha256")).matches("[0-9a-f]{64}");
        assertThat(bases.get(0).text("basisSha256")).isNotEqualTo(bases.get(0).text("identitySha256"));
        assertThat(bases.get(1).isNull("calibration")).as("withdrawn").isTrue();
        assertThat(bases.get(1).text("basisSha256")).isEqualTo(bases.get(1).text("identitySha256"));
        assertThat(record.objects("journal"))
                .extracting(line -> line.text("kind"))
                .containsExactly("CalibrationChanged", "Acted");
        assertThat(record.texts("cautions")).anyMatch(caution -> caution.contains("of the channel's calibration"));
        assertThat(volts(bundle, 1)).isCloseTo(3.3, within(1e-3));
        assertThat(volts(bundle, 40)).isCloseTo(3.366, within(1e-3));
    }

    private static double volts(Path bundle, int row) throws IOException {
        return Double.parseDouble(
                Bundles.text(bundle, "trace.csv").lines().toList().get(row).split(",", -1)[3]);
    }

    private UUID calibrate(RackWatch watch, CalibrationDesk desk) {
        var begun = desk.beginCalibration(BOARD, 0, new Meter("bench meter", 0.0005, 0.0001), "Anna", "the key");
        UUID run = ((Running) begun).run().id();
        scans(watch, 10, 0);
        desk.takePoint(run, CalibrationSpot.SHORTED, 0);
        scans(watch, 10, 5_100);
        desk.takePoint(run, CalibrationSpot.LOW, 0.5);
        scans(watch, 10, 40_800);
        desk.takePoint(run, CalibrationSpot.HIGH, 4);
        assertThat(desk.keepCalibration(run)).isInstanceOf(Kept.class);
        return run;
    }

    private Path write() throws IOException {
        try (StoredRack storage = StoredRack.open(folder.resolve("records"))) {
            PassageCard card = storage.cards().get(0);
            return new BundleWriter(Origin.current(), Bundles.KEY)
                    .write(PassageRecords.of(storage, card), folder)
                    .file();
        }
    }

    private UUID id() {
        return new UUID(0x7000, ++nextId);
    }

    private HostTime now() {
        return new HostTime("host", millis * 1_000_000, 1_750_000_000_000L + millis, WallQuality.KNOWN);
    }

    private void scans(RackWatch watch, int scans, int counts) {
        for (int i = 0; i < scans; i++) {
            millis += 1_000;
            var scan = new BoardScan(1);
            scan.stamp(new LastSeen(millis, 1, millis, millis / 1_000, now()), 0, false);
            scan.channel(0, Reading.VOLTS_VALID | Reading.CELSIUS_VALID, counts + i % 2, 21_000 + i % 2, 0);
            watch.scan(BOARD, scan);
        }
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
                1_000,
                0,
                new Scales(100_000, 0, 1_000),
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
