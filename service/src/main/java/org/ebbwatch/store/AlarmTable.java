package org.ebbwatch.store;

import java.sql.SQLException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/**
 * Alarms, their steps and the messages that tell of them. What is written waits for {@link JournalStore#commitFacts}, together
 * with the facts that caused it: either both are stored or neither is. What is read is what was committed. Thread-safe.
 */
public final class AlarmTable {
    private final JournalStore journal;
    private final Database database;

    AlarmTable(JournalStore journal, Database database) {
        this.journal = journal;
        this.database = database;
    }

    /** A new alarm. */
    public void insert(AlarmRow row) {
        journal.change(
                "insert into alarm (id, kind, subject, state, cover, living, raised_wall_millis, raised_wall_quality,"
                        + " body) values (?, ?, ?, ?, ?, ?, ?, ?, ?)",
                row.id(),
                row.kind(),
                row.subject(),
                row.state(),
                row.cover(),
                living(row),
                row.raised().millis(),
                row.raised().quality(),
                row.body());
    }

    /** An alarm that has made another step; what was fixed when it was raised stays as it is. */
    public void update(AlarmRow row) {
        journal.change(
                "update alarm set state = ?, cover = ?, living = ?, body = ? where id = ?",
                row.state(),
                row.cover(),
                living(row),
                row.body(),
                row.id());
    }

    private static String living(AlarmRow row) {
        return row.alive() ? row.kind() + ' ' + row.subject() : null;
    }

    public void append(AlarmStepRow row) {
        journal.change(
                "insert into alarm_step (alarm_id, sequence, step, state_before, cover_before, state_after, cover_after,"
                        + " who, reason, cause_event_millis, cause_line, wall_millis, wall_quality)"
                        + " values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                row.alarm(),
                row.sequence(),
                row.step(),
                row.stateBefore(),
                row.coverBefore(),
                row.stateAfter(),
                row.coverAfter(),
                row.who(),
                row.reason(),
                row.causeEventMillis(),
                row.causeLine(),
                row.wall().millis(),
                row.wall().quality());
    }

    /** A message to be sent. */
    public void append(OutboxRow row) {
        journal.change(
                "insert into outbox (number, id, alarm_id, outlet, rings, body, written_wall_millis,"
                        + " written_wall_quality) values (?, ?, ?, ?, ?, ?, ?, ?)",
                row.number(),
                row.id(),
                row.alarm(),
                row.outlet(),
                row.rings(),
                row.body(),
                row.written().millis(),
                row.written().quality());
    }

    /** A message has reached its receiver. */
    public void sent(UUID message, long wallMillis) {
        journal.change("update outbox set sent_wall_millis = ? where id = ?", wallMillis, message);
    }

    /** The alarms in the book, oldest first. */
    public List<AlarmRow> living() {
        return query(
                "select * from alarm where living is not null order by id",
                row -> new AlarmRow(
                        row.getObject("id", UUID.class),
                        row.getString("kind"),
                        row.getString("subject"),
                        row.getString("state"),
                        row.getString("cover"),
                        row.getString("living") != null,
                        new WallLabel(row.getLong("raised_wall_millis"), row.getString("raised_wall_quality")),
                        row.getString("body")));
    }

    /** The steps of an alarm, in their order. */
    public List<AlarmStepRow> steps(UUID alarm) {
        return query(
                "select * from alarm_step where alarm_id = ? order by sequence",
                row -> new AlarmStepRow(
                        alarm,
                        row.getLong("sequence"),
                        row.getString("step"),
                        row.getString("state_before"),
                        row.getString("cover_before"),
                        row.getString("state_after"),
                        row.getString("cover_after"),
                        row.getString("who"),
                        row.getString("reason"),
                        row.getLong("cause_event_millis"),
                        row.getString("cause_line"),
                        new WallLabel(row.getLong("wall_millis"), row.getString("wall_quality"))),
                alarm);
    }

    /** Every time an alarm was raised since then, oldest first. */
    public List<RaisedRow> raisedSince(long wallMillis) {
        return query(
                "select alarm_step.alarm_id, kind, subject, cause_line, wall_millis from alarm_step"
                        + " join alarm on alarm.id = alarm_step.alarm_id"
                        + " where step = 'RAISED' and wall_millis >= ? order by wall_millis, alarm_step.alarm_id",
                row -> new RaisedRow(
                        row.getObject("alarm_id", UUID.class),
                        row.getString("kind"),
                        row.getString("subject"),
                        row.getString("cause_line"),
                        row.getLong("wall_millis")),
                wallMillis);
    }

    /** The messages that have not reached their receiver, in their order. */
    public List<OutboxRow> unsent(String outlet) {
        return query(
                "select * from outbox where outlet = ? and sent_wall_millis is null order by number",
                row -> new OutboxRow(
                        row.getLong("number"),
                        row.getObject("id", UUID.class),
                        row.getObject("alarm_id", UUID.class),
                        row.getString("outlet"),
                        row.getBoolean("rings"),
                        row.getString("body"),
                        new WallLabel(row.getLong("written_wall_millis"), row.getString("written_wall_quality"))),
                outlet);
    }

    /** Which outlets there is or was a message for, by the alarms that are alive. */
    public Map<UUID, Set<String>> told() {
        Map<UUID, Set<String>> told = new HashMap<>();
        query(
                        "select distinct outbox.alarm_id, outbox.outlet from outbox join alarm on alarm.id = outbox.alarm_id"
                                + " where alarm.living is not null",
                        row -> Map.entry(row.getObject(1, UUID.class), row.getString(2)))
                .forEach(each -> told.computeIfAbsent(each.getKey(), none -> new HashSet<>())
                        .add(each.getValue()));
        return told;
    }

    /** The highest number a message ever had; 0 before the first. */
    public long lastNumber() {
        return query("select max(number) from outbox", row -> row.getLong(1)).get(0);
    }

    private <T> List<T> query(String sql, Rows.RowReader<T> reader, Object... values) {
        try {
            return Rows.read(database, sql, reader, values);
        } catch (SQLException e) {
            throw new StorageException("the alarms cannot be read", e);
        }
    }
}
