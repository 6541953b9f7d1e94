package org.ebbwatch.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;

/**
 * Reads back what {@link JournalStore} has committed. Thread-safe; every call may throw {@link StorageException}.
 */
public final class JournalReader {

    private final Database database;

    JournalReader(Database database) {
        this.database = database;
    }

    /** All passages, in the order of their ids, which are ordered by time. */
    public List<PassageRow> passages() {
        return query("select * from passage order by id", JournalReader::passage);
    }

    public Optional<PassageRow> passage(UUID id) {
        return query("select * from passage where id = ?", JournalReader::passage, id).stream()
                .findFirst();
    }

    /** The passages nobody has closed: those to take up again after a restart. */
    public List<PassageRow> openPassages() {
        return query("select * from passage where closed_event_millis is null order by id", JournalReader::passage);
    }

    /**
     * A passage that is closed.
     *
     * @param phase the phase it ended in
     */
    public record Closed(PassageRow passage, String phase) {}

    /**
     * The passages that are closed, the one opened last first.
     *
     * @param before only those with smaller ids, which were opened before it
     * @param most how many at most
     */
    public List<Closed> closedPassages(Optional<UUID> before, int most) {
        String sql =
                "select passage.*, (select to_phase from transition where passage_id = passage.id order by sequence desc"
                        + " fetch first row only) as last_phase from passage where closed_event_millis is not null%s"
                        + " order by id desc fetch first " + most + " rows only";
        Rows.RowReader<Closed> reader = row -> new Closed(passage(row), row.getString("last_phase"));
        return before.isPresent()
                ? query(sql.formatted(" and id < ?"), reader, before.get())
                : query(sql.formatted(""), reader);
    }

    /** The journal of one passage in its order. */
    public List<JournalRow> journal(UUID passage) {
        return query(
                "select * from journal where passage_id = ? order by sequence",
                row -> new JournalRow(
                        passage,
                        row.getLong("sequence"),
                        row.getLong("event_millis"),
                        row.getLong("position_millis"),
                        row.getString("kind"),
                        row.getString("body"),
                        new WallLabel(row.getLong("wall_millis"), row.getString("wall_quality"))),
                passage);
    }

    public List<TransitionRow> transitions(UUID passage) {
        return query(
                "select * from transition where passage_id = ? order by sequence",
                row -> new TransitionRow(
                        passage,
                        row.getLong("sequence"),
                        row.getLong("event_millis"),
                        row.getString("from_phase"),
                        row.getString("to_phase"),
                        row.getString("reason")),
                passage);
    }

    public List<FindingRow> findings(UUID passage) {
        return query(
                "select * from finding where passage_id = ? order by sequence",
                row -> new FindingRow(
                        passage,
                        row.getLong("sequence"),
                        row.getString("kind"),
                        row.getLong("raised_event_millis"),
                        optionalLong(row, "cleared_event_millis"),
                        row.getString("evidence")),
                passage);
    }

    private static PassageRow passage(ResultSet row) throws SQLException {
        OptionalLong closed = optionalLong(row, "closed_event_millis");
        return new PassageRow(
                row.getObject("id", UUID.class),
                row.getString("tag"),
                row.getString("board"),
                row.getInt("channel"),
                row.getLong("opened_event_millis"),
                new WallLabel(row.getLong("opened_wall_millis"), row.getString("opened_wall_quality")),
                row.getString("procedure_text"),
                row.getString("cell_text"),
                row.getBoolean("simulated"),
                row.getInt("speed"),
                closed.isPresent()
                        ? Optional.of(new PassageRow.Closing(closed.getAsLong(), row.getString("closed_reason")))
                        : Optional.empty());
    }

    private static OptionalLong optionalLong(ResultSet row, String column) throws SQLException {
        long number = row.getLong(column);
        return row.wasNull() ? OptionalLong.empty() : OptionalLong.of(number);
    }

    private <T> List<T> query(String sql, Rows.RowReader<T> reader, Object... values) {
        try {
            return Rows.read(database, sql, reader, values);
        } catch (SQLException e) {
            throw new StorageException("the journal cannot be read", e);
        }
    }
}
