package org.ebbwatch.store;

import java.io.IOException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Passages, their journals and what the judge made of them, and the alarms that follow.
 *
 * <p>What is written waits in memory until {@link #commitFacts}: first the readings are made durable, then all that waits
 * is committed in one transaction, then the database is forced to disk. So no transition is ever on disk without the
 * readings that caused it, and once {@code commitFacts} has returned a person may be told. If storage fails, everything
 * still waits and the next call tries again; facts for a database that may be away are then kept on the local disk (see
 * {@link QueuedFacts}). A change the database refuses for ever (a sequence number used twice, a passage it does not know) is
 * set aside and named in the exception, so that it cannot hold up the others.
 *
 * <p>Thread-safe.
 */
public final class JournalStore {

    private final Database database;
    private final DurableReadings readings;
    private final List<Change> waiting = new ArrayList<>();
    private final FactKeeper keeper;

    /** A journal in a database that is part of this service. */
    public JournalStore(Database database, DurableReadings readings) {
        this(database, readings, new ForcedFacts(database));
    }

    JournalStore(Database database, DurableReadings readings, FactKeeper keeper) {
        this.database = database;
        this.readings = readings;
        this.keeper = keeper;
    }

    /** A passage begins; the row must be open. */
    public void openPassage(PassageRow row) {
        if (row.closing().isPresent()) {
            throw new IllegalArgumentException("a passage begins open: " + row.tag());
        }
        change(
                "insert into passage (id, tag, board, channel, opened_event_millis, opened_wall_millis,"
                        + " opened_wall_quality, procedure_text, cell_text, simulated, speed)"
                        + " values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                row.id(),
                row.tag(),
                row.board(),
                row.channel(),
                row.openedEventMillis(),
                row.openedWall().millis(),
                row.openedWall().quality(),
                row.procedure(),
                row.cell(),
                row.simulated(),
                row.speed());
    }

    public void closePassage(UUID passage, PassageRow.Closing closing) {
        change(
                "update passage set closed_event_millis = ?, closed_reason = ?"
                        + " where id = ? and closed_event_millis is null",
                closing.eventMillis(),
                closing.reason(),
                passage);
    }

    public void append(JournalRow row) {
        change(
                "insert into journal (passage_id, sequence, event_millis, position_millis, kind, body, wall_millis,"
                        + " wall_quality) values (?, ?, ?, ?, ?, ?, ?, ?)",
                row.passage(),
                row.sequence(),
                row.eventMillis(),
                row.positionMillis(),
                row.kind(),
                row.body(),
                row.wall().millis(),
                row.wall().quality());
    }

    public void append(List<JournalRow> rows) {
        rows.forEach(this::append);
    }

    public void transition(TransitionRow row) {
        change(
                "insert into transition (passage_id, sequence, event_millis, from_phase, to_phase, reason)"
                        + " values (?, ?, ?, ?, ?, ?)",
                row.passage(),
                row.sequence(),
                row.eventMillis(),
                row.fromPhase(),
                row.toPhase(),
                row.reason());
    }

    /** A finding is raised. */
    public void finding(FindingRow row) {
        change(
                "insert into finding (passage_id, sequence, kind, raised_event_millis, cleared_event_millis, evidence)"
                        + " values (?, ?, ?, ?, ?, ?)",
                row.passage(),
                row.sequence(),
                row.kind(),
                row.raisedEventMillis(),
                row.clearedEventMillis().isPresent() ? row.clearedEventMillis().getAsLong() : null,
                row.evidence());
    }

    public void clearFinding(UUID passage, long sequence, long clearedEventMillis) {
        change(
                "update finding set cleared_event_millis = ?"
                        + " where passage_id = ? and sequence = ? and cleared_event_millis is null",
                clearedEventMillis,
                passage,
                sequence);
    }

    /**
     * Makes everything written so far outlive a power cut, readings first.
     *
     * @throws StorageException if it cannot, or a change was refused; then a person must not be told of it
     */
    public synchronized void commitFacts() {
        if (waiting.isEmpty() && !keeper.isBehind()) {
            return;
        }
        readings.flush();
        List<String> refused;
        try {
            refused = keeper.keep(waiting);
        } catch (SQLException | IOException e) {
            throw new StorageException("the journal is not safe on disk", e);
        }
        if (!refused.isEmpty()) {
            throw new StorageException("refused for ever, all else is stored: " + refused);
        }
    }

    /** Why the database does not have all that was committed; empty when it has. */
    public synchronized Optional<String> trouble() {
        return keeper.trouble();
    }

    /** How many changes wait for {@link #commitFacts}. */
    public synchronized int waiting() {
        return waiting.size();
    }

    /** What has been committed, to read back. */
    public JournalReader reader() {
        return new JournalReader(database);
    }

    /** Alarms and their messages; what is written there waits for the same {@link #commitFacts}. */
    public MorningTable mornings() {
        return new MorningTable(this, database);
    }

    public AlarmTable alarms() {
        return new AlarmTable(this, database);
    }

    /** Receipts of what people asked for; what is written there waits for the same {@link #commitFacts}. */
    public ReceiptTable receipts() {
        return new ReceiptTable(this, database);
    }

    /** Evening checks; what is written there waits for the same {@link #commitFacts}. */
    public EveningTable evenings() {
        return new EveningTable(this, database);
    }

    /** Calibrations; what is written there waits for the same {@link #commitFacts}. */
    public CalibrationTable calibrations() {
        return new CalibrationTable(this, database);
    }

    /**
     * Counts another run of the service over these records, at once.
     *
     * @return its number, from 1; never given again
     * @throws StorageException if it cannot be written down
     */
    public long beginRun(long wallMillis) {
        try (Connection connection = database.dataSource().getConnection();
                PreparedStatement statement = connection.prepareStatement(
                        "insert into service_run (opened_wall_millis) values (?)", new String[] {"number"})) {
            statement.setLong(1, wallMillis);
            statement.executeUpdate();
            try (ResultSet number = statement.getGeneratedKeys()) {
                number.next();
                return number.getLong(1);
            }
        } catch (SQLException e) {
            throw new StorageException("this run cannot be written down", e);
        }
    }

    synchronized void change(String sql, Object... values) {
        waiting.add(new Change(sql, values));
    }
}
