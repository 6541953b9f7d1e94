package org.ebbwatch.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;

/**
 * Cards of cells. Nothing happens to a cell because of its card at that moment, so unlike the journal nothing waits: what is written
 * is on disk when the call returns, or was not written. Thread-safe.
 */
public final class IntakeTable {
    private final Database database;

    public IntakeTable(Database database) {
        this.database = database;
    }

    /**
     * Writes a revision, with the photo that came with it.
     *
     * @throws StorageException if it cannot; then nothing of it is written
     */
    public void insert(IntakeRow row, Optional<IntakeRow.Photo> photo) {
        try (Connection connection = database.dataSource().getConnection()) {
            connection.setAutoCommit(false);
            try {
                if (photo.isPresent()) {
                    insert(connection, photo.get());
                }
                insert(connection, row);
                connection.commit();
            } catch (SQLException e) {
                connection.rollback();
                throw e;
            }
            database.force();
        } catch (SQLException e) {
            throw new StorageException("the card of " + row.tag() + " cannot be written", e);
        }
    }

    private static void insert(Connection connection, IntakeRow row) throws SQLException {
        execute(
                connection,
                "insert into intake (tag, revision, request_key, request_hash, written_by, reason, body, wall_millis,"
                        + " wall_quality) values (?, ?, ?, ?, ?, ?, ?, ?, ?)",
                row.tag(),
                row.revision(),
                row.key(),
                row.requestHash(),
                row.writtenBy(),
                row.reason(),
                row.body(),
                row.wall().millis(),
                row.wall().quality());
    }

    private static void insert(Connection connection, IntakeRow.Photo photo) throws SQLException {
        execute(
                connection,
                "merge into intake_photo (tag, sha256, media_type, content) key (tag, sha256) values (?, ?, ?, ?)",
                photo.tag(),
                photo.sha256(),
                photo.mediaType(),
                photo.content());
    }

    private static void execute(Connection connection, String sql, Object... values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            statement.executeUpdate();
        }
    }

    /** Every revision of every card, in the order they were written. */
    public List<IntakeRow> all() {
        return read(
                "select * from intake order by number",
                row -> new IntakeRow(
                        row.getString("tag"),
                        row.getInt("revision"),
                        row.getString("request_key"),
                        row.getString("request_hash"),
                        row.getString("written_by"),
                        row.getString("reason"),
                        row.getString("body"),
                        new WallLabel(row.getLong("wall_millis"), row.getString("wall_quality"))));
    }

    /** A photo of a cell by its digest. */
    public Optional<IntakeRow.Photo> photo(String tag, String sha256) {
        return read(
                        "select * from intake_photo where tag = ? and sha256 = ?",
                        row -> new IntakeRow.Photo(
                                row.getString("tag"),
                                row.getString("sha256"),
                                row.getString("media_type"),
                                row.getBytes("content")),
                        tag,
                        sha256)
                .stream()
                .findFirst();
    }

    private <T> List<T> read(String sql, Rows.RowReader<T> reader, Object... values) {
        try {
            return Rows.read(database, sql, reader, values);
        } catch (SQLException e) {
            throw new StorageException("the cards cannot be read", e);
        }
    }
}
