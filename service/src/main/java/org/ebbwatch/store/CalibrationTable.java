package org.ebbwatch.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.store.CalibrationRow.Withdrawal;

/**
 * Calibrations of channels. What is written waits for {@link JournalStore#commitFacts}; what is read is what was committed.
 * Thread-safe.
 */
public final class CalibrationTable {
    private final JournalStore journal;
    private final Database database;

    CalibrationTable(JournalStore journal, Database database) {
        this.journal = journal;
        this.database = database;
    }

    public void insert(CalibrationRow row) {
        journal.change(
                "insert into calibration (id, serial_number, channel, made_wall_millis, made_wall_quality, body)"
                        + " values (?, ?, ?, ?, ?, ?)",
                row.id(),
                row.serialNumber(),
                row.channel(),
                row.made().millis(),
                row.made().quality(),
                row.body());
    }

    /** It holds no longer. */
    public void withdraw(UUID id, Withdrawal withdrawal) {
        journal.change(
                "update calibration set withdrawn_wall_millis = ?, withdrawn_by = ?, withdrawn_reason = ? where id = ?",
                withdrawal.wallMillis(),
                withdrawal.by(),
                withdrawal.reason(),
                id);
    }

    /**
     * Every one ever kept, oldest first.
     *
     * @throws StorageException if they cannot be read
     */
    public List<CalibrationRow> all() {
        try {
            return Rows.read(database, "select * from calibration order by number", CalibrationTable::row);
        } catch (SQLException e) {
            throw new StorageException("the calibrations cannot be read", e);
        }
    }

    private static CalibrationRow row(ResultSet row) throws SQLException {
        String by = row.getString("withdrawn_by");
        Optional<Withdrawal> withdrawal = by == null
                ? Optional.empty()
                : Optional.of(
                        new Withdrawal(row.getLong("withdrawn_wall_millis"), by, row.getString("withdrawn_reason")));
        return new CalibrationRow(
                row.getObject("id", UUID.class),
                row.getString("serial_number"),
                row.getInt("channel"),
                new WallLabel(row.getLong("made_wall_millis"), row.getString("made_wall_quality")),
                row.getString("body"),
                withdrawal);
    }
}
