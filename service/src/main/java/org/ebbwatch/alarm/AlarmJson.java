package org.ebbwatch.alarm;

import io.micronaut.core.type.Argument;
import io.micronaut.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import org.ebbwatch.alarm.book.Alarm;
import org.ebbwatch.alarm.book.Alarm.PutAway;
import org.ebbwatch.alarm.book.AlarmEvent;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.alarm.book.AlarmTransitions.Standing;
import org.ebbwatch.alarm.book.Cause;
import org.ebbwatch.alarm.book.Cover;
import org.ebbwatch.alarm.book.Raised;
import org.ebbwatch.alarm.book.Subject;
import org.ebbwatch.store.AlarmRow;
import org.ebbwatch.store.RaisedRow;
import org.ebbwatch.store.WallLabel;

/** Alarms as rows and as messages. */
final class AlarmJson {
    private static final JsonMapper MAPPER = JsonMapper.createDefault();

    private AlarmJson() {}

    /** The row of an alarm. */
    static AlarmRow row(Alarm alarm, String wallQuality) {
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("told", alarm.told());
        body.put("steps", alarm.steps());
        body.put("tags", alarm.tags());
        body.put("acknowledgedBy", alarm.acknowledgedBy());
        body.put("cause", cause(alarm.cause()));
        alarm.putAway().ifPresent(putAway -> body.put("putAway", putAway(putAway)));
        return new AlarmRow(
                alarm.id(),
                alarm.kind().name(),
                alarm.subject().text(),
                alarm.state().name(),
                alarm.cover().name(),
                alarm.isAlive(),
                new WallLabel(alarm.raisedWallMillis(), wallQuality),
                write(body));
    }

    private static Map<String, Object> putAway(PutAway putAway) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("who", putAway.who());
        map.put("reason", putAway.reason());
        map.put("sinceWallMillis", putAway.sinceWallMillis());
        putAway.untilWallMillis().ifPresent(until -> map.put("untilWallMillis", until));
        return map;
    }

    private static Map<String, Object> cause(Cause cause) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("line", cause.line());
        map.put("passageId", cause.passage().map(UUID::toString).orElse(null));
        map.put("tag", cause.tag());
        map.put("board", cause.board());
        map.put("channel", cause.channel() < 0 ? null : cause.channel());
        map.put("eventMillis", cause.eventMillis());
        map.put("journalSequence", cause.journalSequence() > 0 ? cause.journalSequence() : null);
        map.put("simulated", cause.simulatedSpeed() > 0);
        map.put("speed", Math.max(1, cause.simulatedSpeed()));
        return map;
    }

    /**
     * Reads the row of an alarm.
     *
     * @throws IllegalArgumentException if it is none
     */
    static Alarm alarm(AlarmRow row) {
        Map<String, Object> body = read(row.body());
        return new Alarm(
                row.id(),
                AlarmKind.valueOf(row.kind()),
                Subject.parse(row.subject()),
                new Standing(AlarmState.valueOf(row.state()), Cover.valueOf(row.cover())),
                (Boolean) body.get("told"),
                row.raised().millis(),
                number(body.get("steps")),
                readCause((Map<?, ?>) body.get("cause")),
                ((List<?>) body.get("tags")).stream().map(String.class::cast).toList(),
                (String) body.get("acknowledgedBy"),
                Optional.ofNullable((Map<?, ?>) body.get("putAway")).map(AlarmJson::readPutAway));
    }

    /** Reads a moment at which an alarm was raised. */
    static Raised raised(RaisedRow row) {
        return new Raised(
                row.alarm(),
                AlarmKind.valueOf(row.kind()),
                Subject.parse(row.subject()),
                row.causeLine(),
                row.wallMillis());
    }

    private static PutAway readPutAway(Map<?, ?> map) {
        Object until = map.get("untilWallMillis");
        return new PutAway(
                (String) map.get("who"),
                (String) map.get("reason"),
                number(map.get("sinceWallMillis")),
                until == null ? OptionalLong.empty() : OptionalLong.of(number(until)));
    }

    private static Cause readCause(Map<?, ?> map) {
        boolean simulated = (Boolean) map.get("simulated");
        return new Cause(
                (String) map.get("line"),
                Optional.ofNullable((String) map.get("passageId")).map(UUID::fromString),
                (String) map.get("tag"),
                (String) map.get("board"),
                map.get("channel") == null ? -1 : (int) number(map.get("channel")),
                number(map.get("eventMillis")),
                map.get("journalSequence") == null ? 0 : number(map.get("journalSequence")),
                simulated ? (int) number(map.get("speed")) : 0);
    }

    /** What an outlet is told of a step. */
    static String message(AlarmEvent event, UUID messageId, long number) {
        Alarm alarm = event.alarm();
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("messageId", messageId.toString());
        body.put("number", number);
        body.put("at", Instant.ofEpochMilli(event.at().wallMillis()).toString());
        body.put("alarmId", alarm.id().toString());
        body.put("sequence", alarm.steps());
        body.put("step", event.step().name());
        body.put("rings", event.rings());
        body.put("kind", alarm.kind().name());
        body.put("urgency", alarm.kind().urgency().name());
        body.put("subject", alarm.subject().text());
        body.put("state", alarm.state().name());
        body.put("cover", alarm.cover().name());
        body.put("latched", alarm.kind().isLatched());
        body.put("raisedAt", Instant.ofEpochMilli(alarm.raisedWallMillis()).toString());
        body.put("what", alarm.what());
        body.put("consequence", alarm.consequence());
        body.put("toDo", alarm.toDo());
        body.put("cells", alarm.tags());
        body.put("cause", cause(alarm.cause()));
        body.put("who", event.who());
        body.put("reason", event.reason());
        return write(body);
    }

    /** What an outlet is told of the rack, and of no alarm. */
    static String notice(RackNotice notice, UUID messageId, long number, long wallMillis) {
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("messageId", messageId.toString());
        body.put("number", number);
        body.put("at", Instant.ofEpochMilli(wallMillis).toString());
        body.put("step", "TOLD");
        body.put("rings", false);
        body.put("kind", notice.kind());
        body.put("urgency", "ADVISORY");
        body.put("subject", Subject.RACK);
        body.put("what", notice.what());
        body.put("text", notice.text());
        return write(body);
    }

    private static long number(Object value) {
        return ((Number) value).longValue();
    }

    private static String write(Map<String, Object> body) {
        try {
            return MAPPER.writeValueAsString(body);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Map<String, Object> read(String text) {
        try {
            return MAPPER.readValue(text, Argument.mapOf(String.class, Object.class));
        } catch (IOException e) {
            throw new IllegalArgumentException("not the body of an alarm: " + text, e);
        }
    }
}
