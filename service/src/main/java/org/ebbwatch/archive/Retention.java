package org.ebbwatch.archive;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import java.util.OptionalInt;
import java.util.UUID;
import org.ebbwatch.store.Database;
import org.ebbwatch.store.Rows;
import org.ebbwatch.store.StorageException;

/** For how long the records of a passage that is over are kept at least. Nothing is ever deleted because a time has passed. */
public final class Retention {
    private static final long MILLIS_PER_DAY = 86_400_000;
    /** A century. */
    private static final int DAYS_MOST = 36_525;

    private final Database database;

    /** Of these records. */
    public Retention(Database database) {
        this.database = database;
    }

    /**
     * A passage that is over.
     *
     * @param endedWallMillis when its last entry was written down
     */
    public record Ended(UUID passage, String tag, long endedWallMillis) {

        /** When its retention is over. */
        public long keptUntilMillis(int days) {
            return endedWallMillis + days * MILLIS_PER_DAY;
        }
    }

    /** Days; empty where nobody said. */
    public OptionalInt days() {
        try {
            return Rows.read(database, "select days from retention", row -> row.getInt(1)).stream()
                    .mapToInt(Integer::intValue)
                    .findFirst();
        } catch (SQLException e) {
            throw new StorageException("the retention cannot be read", e);
        }
    }

    /**
     * Says for how long from now on.
     *
     * @param days 1 to 36525
     */
    public void keepFor(int days) {
        if (days < 1 || days > DAYS_MOST) {
            throw new IllegalArgumentException("records are kept for 1 to " + DAYS_MOST + " days, not " + days);
        }
        try (Connection connection = database.dataSource().getConnection()) {
            connection.setAutoCommit(false);
            try (PreparedStatement clear = connection.prepareStatement("delete from retention");
                    PreparedStatement set = connection.prepareStatement("insert into retention (days) values (?)")) {
                clear.executeUpdate();
                set.setInt(1, days);
                set.executeUpdate();
                connection.commit();
            } catch (SQLException e) {
                connection.rollback();
                throw e;
            }
            database.force();
        } catch (SQLException e) {
            throw new StorageException("the retention cannot be kept", e);
        }
    }

    /** Every passage that is over, the one that ended first first. */
    public List<Ended> ended() {
        try {
            return Rows.read(
                    database,
                    "select p.id, p.tag, coalesce(max(j.wall_millis), p.opened_wall_millis) as ended from passage p"
                            + " left join journal j on j.passage_id = p.id where p.closed_event_millis is not null"
                            + " group by p.id, p.tag, p.opened_wall_millis order by ended",
                    row -> new Ended(row.getObject(1, UUID.class), row.getString(2), row.getLong(3)));
        } catch (SQLException e) {
            throw new StorageException("the passages cannot be read", e);
        }
    }
}
