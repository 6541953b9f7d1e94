package org.ebbwatch.alarm;

import io.micronaut.core.type.Argument;
import io.micronaut.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
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
import org.ebbwatch.store.AlarmStepRow;
import org.ebbwatch.store.RaisedRow;
import org.ebbwatch.store.WallLabel;

/** Alarms and their steps as rows. */
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
        alarm.unheededSinceWallMillis().ifPresent(since -> body.put("unheededSinceWallMillis", since));
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

    /** The row of a step. */
    static AlarmStepRow step(AlarmEvent event, WallLabel wall) {
        return new AlarmStepRow(
                event.alarm().id(),
                event.alarm().steps(),
                event.step().name(),
                event.before().state().name(),
                event.before().cover().name(),
                event.alarm().state().name(),
                event.alarm().cover().name(),
                event.who(),
                event.reason(),
                event.alarm().cause().eventMillis(),
                event.alarm().cause().line(),
                wall);
    }

    private static Map<String, Object> putAway(PutAway putAway) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("who", putAway.who());
        map.put("reason", putAway.reason());
        map.put("sinceWallMillis", putAway.sinceWallMillis());
        putAway.untilWallMillis().ifPresent(until -> map.put("untilWallMillis", until));
        return map;
    }

    static Map<String, Object> cause(Cause cause) {
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
                Optional.ofNullable((Map<?, ?>) body.get("putAway")).map(AlarmJson::readPutAway),
                unheededSince(row, body));
    }

    /** Rows of earlier versions do not say; then it counts from the moment the alarm was raised. */
    private static OptionalLong unheededSince(AlarmRow row, Map<String, Object> body) {
        boolean unheeded = (Boolean) body.get("told")
                && row.cover().equals(Cover.NONE.name())
                && AlarmState.valueOf(row.state()).isUnacknowledged();
        Object since = body.get("unheededSinceWallMillis");
        return unheeded ? OptionalLong.of(since == null ? row.raised().millis() : number(since)) : OptionalLong.empty();
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
