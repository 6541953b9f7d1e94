package org.ebbwatch.alarm;

import io.micronaut.core.type.Argument;
import io.micronaut.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.ebbwatch.alarm.book.Alarm;
import org.ebbwatch.alarm.book.Subject;
import org.ebbwatch.alarm.book.Telling;
import org.ebbwatch.judge.FindingKind.Urgency;

/** What an outlet is told, as JSON and field by field. */
final class AlarmMessage {
    private static final JsonMapper MAPPER = JsonMapper.createDefault();

    private AlarmMessage() {}

    /**
     * The message as JSON.
     *
     * @param link by which it is acknowledged, or empty
     */
    static String text(Telling telling, UUID messageId, long number, String link) {
        Alarm alarm = telling.alarm();
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("messageId", messageId.toString());
        body.put("number", number);
        body.put("at", Instant.ofEpochMilli(telling.at().wallMillis()).toString());
        body.put("alarmId", alarm.id().toString());
        body.put("sequence", alarm.steps());
        body.put("step", telling.what());
        body.put("rings", telling.rings());
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
        body.put("cause", AlarmJson.cause(alarm.cause()));
        body.put("who", telling.who());
        body.put("reason", telling.reason());
        body.put("acknowledgeLink", link);
        return write(body);
    }

    /** What an outlet is told of the rack, and of no alarm, as JSON. */
    static String text(RackNotice notice, UUID messageId, long number, long wallMillis) {
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("messageId", messageId.toString());
        body.put("number", number);
        body.put("at", Instant.ofEpochMilli(wallMillis).toString());
        body.put("step", "TOLD");
        body.put("rings", false);
        body.put("kind", notice.kind());
        body.put("urgency", Urgency.ADVISORY.name());
        body.put("subject", Subject.RACK);
        body.put("what", notice.what());
        body.put("text", notice.text());
        return write(body);
    }

    private static String write(Map<String, Object> body) {
        try {
            return MAPPER.writeValueAsString(body);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * The fields of a message as text, those of an object behind its name and a point.
     *
     * @throws IllegalArgumentException if it is no message
     */
    static Map<String, String> fields(String body) {
        try {
            Map<String, String> fields = new LinkedHashMap<>();
            flatten("", MAPPER.readValue(body, Argument.mapOf(String.class, Object.class)), fields);
            return fields;
        } catch (IOException e) {
            throw new IllegalArgumentException("not a message of an alarm: " + body, e);
        }
    }

    private static void flatten(String prefix, Map<?, ?> object, Map<String, String> fields) {
        object.forEach((key, value) -> {
            if (value instanceof Map<?, ?> inner) {
                flatten(prefix + key + '.', inner, fields);
            } else {
                fields.put(prefix + key, text(value));
            }
        });
    }

    private static String text(Object value) {
        if (value instanceof List<?> list) {
            return list.stream().map(String::valueOf).collect(Collectors.joining(", "));
        }
        return value == null ? "" : value.toString();
    }
}
