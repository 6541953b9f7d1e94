package org.ebbwatch.trace;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.ebbwatch.store.Database;
import org.ebbwatch.store.Rows;
import org.ebbwatch.trace.codec.Sha256;
import org.ebbwatch.trace.codec.ValueKinds;

/** The tables {@code segment} and {@code board_boot}. Thread-safe. */
final class SegmentTable {

    private final Database database;

    SegmentTable(Database database) {
        this.database = database;
    }

    /** One row without its key: what is needed to read it and to check the chain. */
    record Row(long firstEventMillis, Sha256 hash, byte[] body) {}

    /**
     * Inserts all segments and the boots they need, or nothing. Segments that are there already are left alone: a commit
     * whose outcome nobody learned may be tried again.
     */
    void insert(Collection<SealedSegment> segments) throws SQLException {
        try (Connection connection = database.dataSource().getConnection()) {
            connection.setAutoCommit(false);
            try {
                insert(connection, segments);
                connection.commit();
            } catch (SQLException e) {
                connection.rollback();
                throw e;
            }
        }
    }

    void force() throws SQLException {
        database.force();
    }

    private static void insert(Connection connection, Collection<SealedSegment> segments) throws SQLException {
        Set<BoardBoot> boots = new HashSet<>();
        try (PreparedStatement insert =
                connection.prepareStatement("insert into segment (board, channel, boot, first_scan,"
                        + " last_scan, first_event_millis, last_event_millis, samples, hash, body)"
                        + " values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")) {
            for (SealedSegment segment : segments) {
                if (isThere(connection, segment)) {
                    continue;
                }
                if (boots.add(segment.boot())) {
                    insert(connection, segment.boot(), segment.key().firstEventMillis());
                }
                insert.setString(1, segment.key().board());
                insert.setInt(2, segment.key().channel());
                insert.setLong(3, segment.key().bootNumber());
                insert.setLong(4, segment.key().firstScan());
                insert.setLong(5, segment.lastScan());
                insert.setLong(6, segment.key().firstEventMillis());
                insert.setLong(7, segment.lastEventMillis());
                insert.setInt(8, segment.samples());
                insert.setBytes(9, segment.hash().toBytes());
                insert.setBytes(10, segment.body());
                insert.addBatch();
            }
            insert.executeBatch();
        }
    }

    private static boolean isThere(Connection connection, SealedSegment segment) throws SQLException {
        try (PreparedStatement there = connection.prepareStatement(
                "select 1 from segment" + " where board = ? and channel = ? and first_event_millis = ? and hash = ?")) {
            there.setString(1, segment.key().board());
            there.setInt(2, segment.key().channel());
            there.setLong(3, segment.key().firstEventMillis());
            there.setBytes(4, segment.hash().toBytes());
            try (ResultSet row = there.executeQuery()) {
                return row.next();
            }
        }
    }

    private static void insert(Connection connection, BoardBoot boot, long seenEventMillis) throws SQLException {
        try (PreparedStatement known = connection.prepareStatement(
                "select 1 from board_boot where board = ? and boot = ? and identity_hash = ?")) {
            known.setString(1, boot.board());
            known.setLong(2, boot.bootNumber());
            known.setBytes(3, boot.identityHash().toBytes());
            try (ResultSet row = known.executeQuery()) {
                if (row.next()) {
                    return;
                }
            }
        }
        try (PreparedStatement insert =
                connection.prepareStatement("insert into board_boot (board, boot, identity_hash,"
                        + " value_kinds, identity, seen_event_millis) values (?, ?, ?, ?, ?, ?)")) {
            insert.setString(1, boot.board());
            insert.setLong(2, boot.bootNumber());
            insert.setBytes(3, boot.identityHash().toBytes());
            insert.setInt(4, boot.kinds().toByte());
            insert.setString(5, boot.identity());
            insert.setLong(6, seenEventMillis);
            insert.executeUpdate();
        }
    }

    /** The newest scan of a board in the segments of its first channel, which every scan has. */
    Optional<LastScan> lastScan(String board) throws SQLException {
        String sql = "select boot, last_scan, last_event_millis from segment where board = ? and channel = 0"
                + " and first_event_millis = (select max(first_event_millis) from segment where board = ? and channel = 0)";
        return query(sql, row -> new LastScan(row.getLong(1), row.getLong(2), row.getLong(3)), board, board).stream()
                .findFirst();
    }

    /** Hash of the newest segment of every channel of a board that has one. */
    Map<Integer, Sha256> lastHashes(String board) throws SQLException {
        String sql = "select s.channel, s.hash from segment s join (select channel, max(first_event_millis) as newest"
                + " from segment where board = ? group by channel) n"
                + " on s.channel = n.channel and s.first_event_millis = n.newest where s.board = ?";
        Map<Integer, Sha256> hashes = new HashMap<>();
        query(sql, row -> hashes.put(row.getInt(1), Sha256.wrap(row.getBytes(2))), board, board);
        return hashes;
    }

    /**
     * The next segments of a channel that begin within [from, before), oldest first, at most {@code most}.
     */
    List<Row> rows(String board, int channel, long from, long before, int most) throws SQLException {
        return query(
                "select first_event_millis, hash, body from segment where board = ? and channel = ?"
                        + " and first_event_millis >= ? and first_event_millis < ?"
                        + " order by first_event_millis fetch first ? rows only",
                row -> new Row(row.getLong(1), Sha256.wrap(row.getBytes(2)), row.getBytes(3)),
                board,
                channel,
                from,
                before,
                most);
    }

    /** Where the segment begins that holds an event time, or the time itself if none begins before it. */
    long beginningAt(String board, int channel, long eventMillis) throws SQLException {
        return query(
                        "select max(first_event_millis) from segment where board = ? and channel = ?"
                                + " and first_event_millis <= ?",
                        row -> {
                            long begins = row.getLong(1);
                            return row.wasNull() ? eventMillis : begins;
                        },
                        board,
                        channel,
                        eventMillis)
                .get(0);
    }

    /** Where the chain of a channel goes on over deleted segments: from the hash before them to that of the last of them. */
    Map<Sha256, Sha256> deleted(String board, int channel) throws SQLException {
        Map<Sha256, Sha256> bridges = new HashMap<>();
        query(
                "select before_hash, last_hash from deleted_segments where board = ? and channel = ?",
                row -> bridges.put(Sha256.wrap(row.getBytes(1)), Sha256.wrap(row.getBytes(2))),
                board,
                channel);
        return bridges;
    }

    List<BoardBoot> boots(String board) throws SQLException {
        return query(
                "select board, boot, value_kinds, identity, identity_hash from board_boot where board = ?"
                        + " order by seen_event_millis",
                SegmentTable::boot,
                board);
    }

    Optional<BoardBoot> boot(Sha256 identityHash) throws SQLException {
        return query(
                        "select board, boot, value_kinds, identity, identity_hash from board_boot"
                                + " where identity_hash = ? order by seen_event_millis",
                        SegmentTable::boot,
                        (Object) identityHash.toBytes())
                .stream()
                .findFirst();
    }

    private static BoardBoot boot(ResultSet row) throws SQLException {
        return new BoardBoot(
                row.getString(1),
                row.getLong(2),
                ValueKinds.of((byte) row.getInt(3)),
                row.getString(4),
                Sha256.wrap(row.getBytes(5)));
    }

    private <T> List<T> query(String sql, Rows.RowReader<T> reader, Object... values) throws SQLException {
        return Rows.read(database, sql, reader, values);
    }
}
