package org.ebbwatch.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * The receipts of what people asked for and was done. What is written waits for {@link JournalStore#commitFacts}, together with the
 * entries it is about; what is read is what was committed. Thread-safe.
 */
public final class ReceiptTable {
    private final JournalStore journal;
    private final Database database;

    ReceiptTable(JournalStore journal, Database database) {
        this.journal = journal;
        this.database = database;
    }

    public void insert(ReceiptRow row) {
        journal.change(
                "insert into receipt (request_key, request_hash, passage_id, sequence, board, channel, phase, reason,"
                        + " wall_millis, wall_quality) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                row.key(),
                row.requestHash(),
                row.passage(),
                row.sequence(),
                row.board(),
                row.channel(),
                row.phase(),
                row.reason(),
                row.wall().millis(),
                row.wall().quality());
    }

    public void insert(AlarmReceiptRow row) {
        journal.change(
                "insert into alarm_receipt (request_key, request_hash, alarm_id, sequence, kind, step, state, cover, who,"
                        + " wall_millis, wall_quality) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                row.key(),
                row.requestHash(),
                row.alarm(),
                row.sequence(),
                row.kind(),
                row.step(),
                row.state(),
                row.cover(),
                row.who(),
                row.wall().millis(),
                row.wall().quality());
    }

    /**
     * The receipt of that key for a request about a passage.
     *
     * @throws StorageException if the database is away
     */
    public Optional<ReceiptRow> find(String key) {
        return first(
                "select * from receipt where request_key = ?",
                row -> new ReceiptRow(
                        row.getString("request_key"),
                        row.getString("request_hash"),
                        row.getObject("passage_id", UUID.class),
                        row.getLong("sequence"),
                        row.getString("board"),
                        row.getInt("channel"),
                        row.getString("phase"),
                        row.getString("reason"),
                        wall(row)),
                key);
    }

    /**
     * The receipt of that key for a request about an alarm.
     *
     * @throws StorageException if the database is away
     */
    public Optional<AlarmReceiptRow> findOfAlarm(String key) {
        return first(
                "select * from alarm_receipt where request_key = ?",
                row -> new AlarmReceiptRow(
                        row.getString("request_key"),
                        row.getString("request_hash"),
                        row.getObject("alarm_id", UUID.class),
                        row.getLong("sequence"),
                        row.getString("kind"),
                        row.getString("step"),
                        row.getString("state"),
                        row.getString("cover"),
                        row.getString("who"),
                        wall(row)),
                key);
    }

    /**
     * Forgets the receipts written before that time by the wall clock, at once.
     *
     * @return how many
     * @throws StorageException if the database is away
     */
    public int forgetBefore(long wallMillis) {
        int forgotten = 0;
        for (String table : List.of("receipt", "alarm_receipt")) {
            try (Connection connection = database.dataSource().getConnection();
                    PreparedStatement statement =
                            connection.prepareStatement("delete from " + table + " where wall_millis < ?")) {
                statement.setLong(1, wallMillis);
                forgotten += statement.executeUpdate();
            } catch (SQLException e) {
                throw new StorageException("old receipts cannot be forgotten", e);
            }
        }
        return forgotten;
    }

    private static WallLabel wall(ResultSet row) throws SQLException {
        return new WallLabel(row.getLong("wall_millis"), row.getString("wall_quality"));
    }

    private <T> Optional<T> first(String sql, Rows.RowReader<T> reader, String key) {
        try {
            return Rows.read(database, sql, reader, key).stream().findFirst();
        } catch (SQLException e) {
            throw new StorageException("the receipts cannot be read", e);
        }
    }
}
