package org.ebbwatch.archive;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.UUID;
import org.ebbwatch.store.Database;
import org.ebbwatch.store.Rows;
import org.ebbwatch.store.StorageException;

/** Deletes segments and writes down where the chain goes on. */
final class SegmentRows {
    private SegmentRows() {}

    /** Event time at which the newest segment of a channel begins. */
    static long newest(Database database, String board, int channel) {
        try {
            return Rows.read(
                            database,
                            "select max(first_event_millis) from segment where board = ? and channel = ?",
                            row -> row.getLong(1),
                            board,
                            channel)
                    .get(0);
        } catch (SQLException e) {
            throw new StorageException("the segments cannot be read", e);
        }
    }

    static void delete(Connection connection, UUID deletion, DeletedSegments run) throws SQLException {
        Deletion.execute(
                connection,
                "insert into deleted_segments (deletion_id, board, channel, first_event_millis, last_event_millis, before_hash,"
                        + " last_hash) values (?, ?, ?, ?, ?, ?, ?)",
                deletion,
                run.board(),
                run.channel(),
                run.firstEventMillis(),
                run.lastEventMillis(),
                run.before().toBytes(),
                run.last().toBytes());
        int gone = Deletion.execute(
                connection,
                "delete from segment where board = ? and channel = ? and first_event_millis between ? and ?",
                run.board(),
                run.channel(),
                run.firstEventMillis(),
                run.lastEventMillis());
        if (gone != run.count()) {
            throw new SQLException(gone + " segments instead of " + run.count());
        }
    }
}
