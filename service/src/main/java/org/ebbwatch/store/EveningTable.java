package org.ebbwatch.store;

import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;

/**
 * Evening checks and the passages they cover. What is written waits for {@link JournalStore#commitFacts}; what is read is what was
 * committed. Thread-safe.
 */
public final class EveningTable {
    private final JournalStore journal;
    private final Database database;

    EveningTable(JournalStore journal, Database database) {
        this.journal = journal;
        this.database = database;
    }

    /** A check begins. */
    public void insert(EveningRow row) {
        journal.change(
                "insert into evening_check (id, request_key, started_by, started_wall_millis, started_wall_quality, body)"
                        + " values (?, ?, ?, ?, ?, ?)",
                row.id(),
                row.key(),
                row.startedBy(),
                row.started().millis(),
                row.started().quality(),
                row.body());
        row.passages()
                .forEach(passage -> journal.change(
                        "insert into evening_check_passage (check_id, passage_id) values (?, ?)", row.id(), passage));
    }

    /** A check is over. */
    public void end(UUID id, long wallMillis, String verdict, String body) {
        journal.change(
                "update evening_check set ended_wall_millis = ?, verdict = ?, body = ? where id = ?",
                wallMillis,
                verdict,
                body,
                id);
    }

    /** The last so many, newest first. */
    public List<EveningRow> latest(int most) {
        return query("select * from evening_check order by started_wall_millis desc, id desc limit ?", most);
    }

    public Optional<EveningRow> find(UUID id) {
        return query("select * from evening_check where id = ?", id).stream().findFirst();
    }

    /** The one that this request began. */
    public Optional<EveningRow> find(String key) {
        return query("select * from evening_check where request_key = ?", key).stream()
                .findFirst();
    }

    private List<EveningRow> query(String sql, Object... values) {
        try {
            return Rows.read(
                    database,
                    sql,
                    row -> {
                        UUID id = row.getObject("id", UUID.class);
                        long ended = row.getLong("ended_wall_millis");
                        return new EveningRow(
                                id,
                                row.getString("request_key"),
                                row.getString("started_by"),
                                new WallLabel(
                                        row.getLong("started_wall_millis"), row.getString("started_wall_quality")),
                                row.getString("verdict") == null ? OptionalLong.empty() : OptionalLong.of(ended),
                                Optional.ofNullable(row.getString("verdict")),
                                passages(id),
                                row.getString("body"));
                    },
                    values);
        } catch (SQLException e) {
            throw new StorageException("the evening checks cannot be read", e);
        }
    }

    private List<UUID> passages(UUID check) throws SQLException {
        return Rows.read(
                database,
                "select passage_id from evening_check_passage where check_id = ? order by passage_id",
                row -> row.getObject(1, UUID.class),
                check);
    }
}
