package org.ebbwatch.demo;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Outcome.Event;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.BoardBasis;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.PassageLog;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.passage.TraceLog;

/** One scenario of four cells with faults, watched with clocks that may be odd: everything that was judged of it. */
final class ClockTrial implements TraceLog, PassageLog {
    private static final int CELLS = 4;
    private static final long INTERVAL_MILLIS = 2_000;

    private final StoredRack storage;
    private final List<String> judged = new ArrayList<>();

    private ClockTrial(StoredRack storage) {
        this.storage = storage;
    }

    /**
     * Watches it.
     *
     * @param speed 1: the board is believed to be real, and its clock is held against the host's
     * @return every entry of every journal and everything the judge said, in order, by the board's time
     */
    static List<String> run(Path records, long scenario, Duration time, int speed, OddClocks clocks) {
        try (StoredRack storage = StoredRack.open(records)) {
            var trial = new ClockTrial(storage);
            var rack = new InProcessRack(
                    RandomBench.of(scenario, CELLS), scenario, INTERVAL_MILLIS, trial, trial, speed, clocks);
            rack.checkInAll(Procedure.careful());
            rack.run(() -> false, time.toMillis());
            for (PassageCard card : storage.cards()) {
                trial.judged.add("folded again " + storage.refold(card).events());
                trial.judged.add("written down " + storage.recorded(card));
            }
            return trial.judged;
        }
    }

    @Override
    public void identified(String board, BoardBasis basis) {
        storage.identified(board, basis);
    }

    @Override
    public void append(String board, BoardScan scan) {
        judged.add("scan at " + scan.eventMillis());
        storage.append(board, scan);
    }

    @Override
    public void opened(PassageCard card) {
        storage.opened(card);
    }

    @Override
    public void entered(UUID passage, long sequence, long lastScanMillis, Entry entry) {
        judged.add(passage + " " + sequence + " " + entry);
        storage.entered(passage, sequence, lastScanMillis, entry);
    }

    @Override
    public void happened(UUID passage, long sequence, long eventMillis, Event event) {
        judged.add(passage + " " + sequence + " " + eventMillis + " " + event);
        storage.happened(passage, sequence, eventMillis, event);
    }

    @Override
    public void commit() {
        storage.commit();
    }
}
