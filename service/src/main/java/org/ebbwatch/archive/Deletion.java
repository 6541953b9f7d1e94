package org.ebbwatch.archive;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import java.util.OptionalInt;
import java.util.UUID;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.PassageChain;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.store.StorageException;

/**
 * Deletes the records of one passage, when a person asks for it, from records that no service uses, and writes down what was deleted.
 * The readings go with it as far as whole segments are this passage's alone; the chain of its channel stays one that can be followed.
 * The readings of a string stay, for its other cells are judged by them.
 */
public final class Deletion {
    private static final String WALL_QUALITY = "host";

    private final StoredRack rack;
    private final Retention retention;

    /** From these records. */
    public Deletion(StoredRack rack) {
        this.rack = rack;
        this.retention = new Retention(rack.database());
    }

    /** What was deleted. */
    public record Deleted(UUID id, String tag, int journalRows, int segments) {}

    /**
     * Deletes a passage.
     *
     * @param id of the deletion
     * @param by whoever asks for it, 1 to 200 characters
     * @param reason 1 to 2000 characters
     * @param wallMillis now
     * @throws IllegalArgumentException if there is no such passage, it is not over, or must still be kept; nothing was done
     */
    public Deleted delete(UUID id, UUID passage, String by, String reason, long wallMillis) {
        PassageCard card =
                rack.card(passage).orElseThrow(() -> new IllegalArgumentException("there is no passage " + passage));
        Retention.Ended ended = retention.ended().stream()
                .filter(each -> each.passage().equals(passage))
                .findFirst()
                .orElseThrow(
                        () -> new IllegalArgumentException("passage " + passage + " is not over: withdraw it first"));
        OptionalInt days = retention.days();
        if (days.isPresent() && ended.keptUntilMillis(days.getAsInt()) > wallMillis) {
            throw new IllegalArgumentException(
                    "passage " + passage + " must be kept for " + days.getAsInt() + " days, and they are not over");
        }
        requireText("by", by, 200);
        requireText("reason", reason, 2000);
        rack.seal();
        List<DeletedSegments> segments = card.cell().string().isPresent() ? List.of() : segments(card);
        try (Connection connection = rack.database().dataSource().getConnection()) {
            connection.setAutoCommit(false);
            try {
                Deleted deleted = delete(connection, id, card, by, reason, wallMillis, segments);
                connection.commit();
                rack.database().force();
                return deleted;
            } catch (SQLException e) {
                connection.rollback();
                throw e;
            }
        } catch (SQLException e) {
            throw new StorageException("nothing was deleted", e);
        }
    }

    private static void requireText(String what, String text, int most) {
        if (text.isBlank() || text.length() > most) {
            throw new IllegalArgumentException(what + " must be said, in at most " + most + " characters");
        }
    }

    /** Runs of segments that lie within the passage, but never the newest of a channel: event time goes on from it. */
    private List<DeletedSegments> segments(PassageCard card) {
        return rack.chain(card).stays().stream()
                .map(stay -> DeletedSegments.within(stay, newest(stay)))
                .filter(run -> run.count() > 0)
                .toList();
    }

    private long newest(PassageChain.Stay stay) {
        return SegmentRows.newest(rack.database(), stay.board(), stay.channel());
    }

    private static Deleted delete(
            Connection connection,
            UUID id,
            PassageCard card,
            String by,
            String reason,
            long wallMillis,
            List<DeletedSegments> segments)
            throws SQLException {
        int count = segments.stream().mapToInt(DeletedSegments::count).sum();
        int journalRows = count(connection, card.id());
        execute(
                connection,
                "insert into deletion (id, passage_id, tag, board, opened_wall_millis, closed_reason, who, reason, journal_rows,"
                        + " segments, wall_millis, wall_quality) select ?, id, tag, board, opened_wall_millis,"
                        + " coalesce(closed_reason, ''), ?, ?, ?, ?, ?, ? from passage where id = ?",
                id,
                by,
                reason,
                journalRows,
                count,
                wallMillis,
                WALL_QUALITY,
                card.id());
        for (DeletedSegments run : segments) {
            SegmentRows.delete(connection, id, run);
        }
        for (String table : List.of("receipt", "evening_check_passage", "finding", "transition", "journal")) {
            execute(connection, "delete from " + table + " where passage_id = ?", card.id());
        }
        execute(connection, "delete from passage where id = ?", card.id());
        return new Deleted(id, card.cell().tag(), journalRows, count);
    }

    private static int count(Connection connection, UUID passage) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement("select count(*) from journal where passage_id = ?")) {
            statement.setObject(1, passage);
            try (var row = statement.executeQuery()) {
                row.next();
                return row.getInt(1);
            }
        }
    }

    static int execute(Connection connection, String sql, Object... values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            return statement.executeUpdate();
        }
    }
}
