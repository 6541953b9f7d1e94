package org.ebbwatch.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Savepoint;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;

/**
 * Passages, their journals and what the judge made of them, and the alarms that follow.
 *
 * <p>What is written waits in memory until {@link #commitFacts}: first the readings are made durable, then all that waits
 * is committed in one transaction, then the database is forced to disk. So no transition is ever on disk without the
 * readings that caused it, and once {@code commitFacts} has returned a person may be told. If storage fails, everything
 * still waits and the next call tries again. A change the database refuses for ever (a sequence number used twice, a passage
 * it does not know) is set aside and named in the exception, so that it cannot hold up the others.
 *
 * <p>Thread-safe.
 */
public final class JournalStore {

    private static final String NO_SUCH_ROW = "02000";

    private final Database database;
    private final DurableReadings readings;
    private final List<Change> waiting = new ArrayList<>();
    private boolean unforced;

    public JournalStore(Database database, DurableReadings readings) {
        this.database = database;
        this.readings = readings;
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
        if (waiting.isEmpty() && !unforced) {
            return;
        }
        readings.flush();
        List<String> refused;
        try (Connection connection = database.dataSource().getConnection()) {
            connection.setAutoCommit(false);
            try {
                refused = applyWaiting(connection);
                connection.commit();
            } catch (SQLException e) {
                connection.rollback();
                throw e;
            }
            waiting.clear();
            unforced = true;
            database.force();
            unforced = false;
        } catch (SQLException e) {
            throw new StorageException("the journal is not safe on disk", e);
        }
        if (!refused.isEmpty()) {
            throw new StorageException("refused for ever, all else is stored: " + refused);
        }
    }

    private List<String> applyWaiting(Connection connection) throws SQLException {
        List<String> refused = new ArrayList<>();
        for (Change change : waiting) {
            Savepoint before = connection.setSavepoint();
            try {
                change.apply(connection);
            } catch (SQLException e) {
                if (!isRefusal(e)) {
                    throw e;
                }
                connection.rollback(before);
                refused.add(change + ": " + e.getMessage());
            }
        }
        return refused;
    }

    /** SQL state classes of ISO/IEC 9075: 02 no such row, 22 unusable value, 23 constraint violated. */
    private static boolean isRefusal(SQLException e) {
        String state = String.valueOf(e.getSQLState());
        return state.startsWith("02") || state.startsWith("22") || state.startsWith("23");
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

    private record Change(String sql, Object[] values) {

        void apply(Connection connection) throws SQLException {
            try (PreparedStatement statement = connection.prepareStatement(sql)) {
                for (int i = 0; i < values.length; i++) {
                    statement.setObject(i + 1, values[i]);
                }
                if (statement.executeUpdate() != 1) {
                    throw new SQLException("there is no such row", NO_SUCH_ROW);
                }
            }
        }

        @Override
        public String toString() {
            return sql.substring(0, sql.indexOf(' ', sql.indexOf(' ') + 1)) + " " + Arrays.toString(values);
        }
    }
}
