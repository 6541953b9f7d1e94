package org.ebbwatch.passage;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.ebbwatch.passage.RackSource.TracePoint;
import org.ebbwatch.passage.RackSource.Window;
import org.ebbwatch.store.AlarmTable;
import org.ebbwatch.store.CalibrationTable;
import org.ebbwatch.store.EveningTable;
import org.ebbwatch.store.IntakeTable;
import org.ebbwatch.store.MorningTable;
import org.ebbwatch.store.ReceiptTable;
import org.ebbwatch.time.EventClock;

/** Where a rack keeps its readings and its journal. Used under the rack's lock. */
public interface RackStorage extends TraceLog, PassageLog, PassageTeller, AutoCloseable {

    /** Forces the readings so far to disk; to be called at least every 2 s. */
    void flush();

    /** The clock of a board, going on where an earlier run left it. */
    EventClock clock(String board);

    /** Tags of all cells that ever had a passage here. */
    Set<String> tags();

    /** Passages nobody has ended. */
    List<PassageCard> openCards();

    /** As {@link RackSource#closed}; safe for use by several threads. */
    List<ClosedPassage> closed(Optional<UUID> before, int most);

    /**
     * Folds what is stored of a passage again, from its first reading on, and writes down what an earlier run had no time to;
     * to be committed.
     */
    TakenUp takeUp(PassageCard passage);

    /** Readings of a passage thinned out to about {@code points} so that no peak is lost; safe for use by several threads. */
    List<TracePoint> trace(PassageCard passage, Window window, int points);

    /** What a cell comes to whose load came off then; empty with too few readings; safe for use by several threads. */
    Optional<RestPrediction> restPrediction(PassageCard passage, long offMillis);

    /** Where alarms are written down; what is written there is committed with the journal. */
    AlarmTable alarms();

    /** Where morning reports are written down; what is written there is committed with the journal. */
    MorningTable mornings();

    /** Where receipts of people's requests are written down; what is written there is committed with the journal. */
    ReceiptTable receipts();

    /** Where evening checks are written down; what is written there is committed with the journal. */
    EveningTable evenings();

    /** Where the cards of cells are written down, at once. */
    IntakeTable intakes();
    /** Where calibrations are written down; what is written there is committed with the journal. */
    CalibrationTable calibrations();

    /** Bytes free on the disk of the records; 0 where nobody can say. */
    long freeBytes();

    /** Forgets receipts older than 30 days and counts another run of the service over these records; 0 where that cannot be written down. */
    long beginRun(long wallMillis);

    /** Why readings or facts cannot be made to last now; empty while they can. */
    Optional<String> trouble();

    /** What a backup of it is made of. */
    BackupSource backupSource();

    /** Writes what is still in memory and lets go of the files. */
    @Override
    void close();
}
