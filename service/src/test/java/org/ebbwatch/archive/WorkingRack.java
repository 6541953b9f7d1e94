package org.ebbwatch.archive;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.BackupSource;
import org.ebbwatch.passage.BoardControl;
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

/** A rack of two cells that is read second by second, each second by hand; its own lock around everything, as in a service. */
final class WorkingRack implements BackupSource, AutoCloseable {
    static final String BOARD = "left";
    static final long OPENED_WALL_MILLIS = 1_750_000_000_000L;

    private final StoredRack storage;
    private final RackWatch watch;
    private long ids;
    private long millis;

    WorkingRack(Path folder) {
        storage = StoredRack.open(folder);
        watch = new RackWatch(
                storage, storage, new NoControl(), () -> new UUID(0x7000, 0x8000_0000_0000_0000L + ++ids));
        watch.identified(BOARD, identity());
        seconds(3, 40_000);
    }

    synchronized UUID checkIn(int channel, String tag) {
        return watch.checkIn(
                        BOARD,
                        channel,
                        new CellCard(tag, Chemistry.LFP, 1.5, 10, false, false),
                        Procedure.careful(),
                        OPENED_WALL_MILLIS)
                .id();
    }

    synchronized void act(UUID passage, Act act) {
        watch.act(passage, act);
        storage.commit();
    }

    synchronized void seconds(int seconds, int counts) {
        for (int i = 0; i < seconds; i++) {
            millis += 1_000;
            var scan = new BoardScan(2);
            var arrival = new HostTime("host", millis * 1_000_000, OPENED_WALL_MILLIS + millis, WallQuality.KNOWN);
            scan.stamp(new LastSeen(millis, 1, millis, millis / 1_000, arrival), 0, false);
            for (int channel = 0; channel < 2; channel++) {
                scan.channel(
                        channel,
                        Reading.VOLTS_VALID | Reading.CELSIUS_VALID,
                        counts - (int) (millis / 1_000 % 3) - channel,
                        21_000,
                        0);
            }
            watch.scan(BOARD, scan);
        }
        storage.flush();
    }

    synchronized long eventMillis() {
        return millis;
    }

    StoredRack storage() {
        return storage;
    }

    @Override
    public synchronized void holdReadings() {
        storage.backupSource().holdReadings();
    }

    @Override
    public void copyDatabase(Path zip) throws IOException {
        storage.backupSource().copyDatabase(zip);
    }

    @Override
    public synchronized void copyReadings(Path to) throws IOException {
        storage.backupSource().copyReadings(to);
    }

    @Override
    public void close() {
        storage.close();
    }

    private static Identity identity() {
        var cell = new ChannelIdentity(ChannelRole.CELL, Set.of(Ability.VOLTS, Ability.CELSIUS), 0);
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
                List.of(cell, cell));
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
