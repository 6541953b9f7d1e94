package org.ebbwatch.store;

import java.sql.SQLException;
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

    /**
     * The receipt of that key.
     *
     * @throws StorageException if the database is away
     */
    public Optional<ReceiptRow> find(String key) {
        try {
            return Rows.read(
                            database,
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
                                    new WallLabel(row.getLong("wall_millis"), row.getString("wall_quality"))),
                            key)
                    .stream()
                    .findFirst();
        } catch (SQLException e) {
            throw new StorageException("the receipts cannot be read", e);
        }
    }
}
