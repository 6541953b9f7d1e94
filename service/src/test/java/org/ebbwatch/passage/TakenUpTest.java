package org.ebbwatch.passage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Outcome.Event;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.store.H2Database;
import org.ebbwatch.store.JournalStore;
import org.ebbwatch.store.TransitionRow;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.LastSeen;
import org.ebbwatch.time.WallQuality;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A passage taken up by the next run of the service, whose records are not quite what this judge makes of them. */
class TakenUpTest {
    private static final String BOARD = "left";
    private static final UUID ID = UUID.fromString("0193f0a0-0000-7000-8000-000000000007");

    @TempDir
    Path folder;

    private long millis;

    @Test
    void what_followed_from_the_last_readings_is_written_down_once() {
        List<String> whole = watchUntilHot(false);
        List<String> cut = watchUntilHot(true);
        assertThat(cut).isEqualTo(whole.subList(0, cut.size())).hasSizeLessThan(whole.size());

        assertThat(takeUp().otherPhase()).isEmpty();
        assertThat(recorded()).isEqualTo(whole);

        takeUp();
        assertThat(recorded()).as("and not again").isEqualTo(whole);
    }

    @Test
    void a_passage_left_in_another_phase_is_held_and_its_old_rows_stay() {
        watchUntilHot(false);
        List<String> before = recorded();
        pretendThatAnEarlierJudgeLeftItIn(Phase.REST, before.size() + 1);

        try (StoredRack storage = StoredRack.open(folder)) {
            RackWatch watch = watch(storage, storage);
            TakenUp takenUp = storage.takeUp(card(storage));
            assertThat(takenUp.otherPhase()).contains(Phase.REST);
            watch.takeUp(takenUp);
            assertThat(watch.view().passages())
                    .allSatisfy(passage -> assertThat(passage.phase()).isEqualTo(Phase.HELD));
        }
        assertThat(recorded()).startsWith(before.get(0)).contains(millis + " REST HELD judged anew");
        assertThat(takeUp().otherPhase()).as("it is told once").isEmpty();
    }

    /** Drains, then heats beyond the trip; a service that dies does not get to write down what follows from the heat. */
    private List<String> watchUntilHot(boolean dies) {
        deleteRecords();
        millis = 0;
        try (StoredRack storage = StoredRack.open(folder)) {
            var log = new DyingLog(storage);
            RackWatch watch = watch(storage, log);
            watch.identified(BOARD, PlainBoard.identity(1, 1_000));
            scans(watch, 21, 3);
            watch.checkIn(
                    BOARD,
                    0,
                    new CellCard("A-17", Chemistry.LAYERED_OXIDE, 1.5, 10, false, false),
                    Procedure.careful(),
                    1_750_000_000_000L);
            scans(watch, 21, 30);
            watch.act(ID, Act.PUT_ON);
            log.dead = dies;
            scans(watch, 61, 3);
        }
        return recorded();
    }

    private void deleteRecords() {
        for (String file : List.of("ebbwatch.mv.db", "readings.tail")) {
            folder.resolve(file).toFile().delete();
        }
    }

    private void pretendThatAnEarlierJudgeLeftItIn(Phase phase, long row) {
        try (H2Database database = H2Database.open(folder)) {
            var journal = new JournalStore(database, () -> {});
            journal.transition(new TransitionRow(ID, row, millis, "HELD", phase.name(), "as it was judged then"));
            journal.commitFacts();
        }
    }

    private TakenUp takeUp() {
        try (StoredRack storage = StoredRack.open(folder)) {
            return storage.takeUp(card(storage));
        }
    }

    private List<String> recorded() {
        try (StoredRack storage = StoredRack.open(folder)) {
            return storage.recorded(card(storage));
        }
    }

    private static PassageCard card(StoredRack storage) {
        return storage.cards().get(0);
    }

    private static RackWatch watch(StoredRack trace, PassageLog log) {
        return new RackWatch(trace, log, new PlainBoard(), () -> ID);
    }

    private void scans(RackWatch watch, double celsius, int seconds) {
        for (int i = 0; i < seconds; i++) {
            millis += 1_000;
            var host = new HostTime("host", millis * 1_000_000, 1_750_000_000_000L + millis, WallQuality.KNOWN);
            BoardScan scan = new BoardScan(1).stamp(new LastSeen(millis, 1, millis, millis / 1_000, host), 0, false);
            scan.channel(
                    0, Reading.VOLTS_VALID | Reading.CELSIUS_VALID, 40_000 - i % 3, (int) (celsius * 1_000) + i % 2, 0);
            watch.scan(BOARD, scan);
        }
    }

    private static final class DyingLog implements PassageLog {
        private final PassageLog log;
        private boolean dead;

        private DyingLog(PassageLog log) {
            this.log = log;
        }

        @Override
        public void opened(PassageCard card) {
            log.opened(card);
        }

        @Override
        public void entered(UUID passage, long sequence, long lastScanMillis, Entry entry) {
            log.entered(passage, sequence, lastScanMillis, entry);
        }

        @Override
        public void happened(UUID passage, long sequence, long eventMillis, Event event) {
            if (!dead) {
                log.happened(passage, sequence, eventMillis, event);
            }
        }

        @Override
        public void commit() {
            log.commit();
        }
    }
}
