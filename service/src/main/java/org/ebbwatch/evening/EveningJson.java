package org.ebbwatch.evening;

import io.micronaut.core.type.Argument;
import io.micronaut.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.evening.rule.Matter;
import org.ebbwatch.evening.rule.Point;
import org.ebbwatch.evening.rule.Proof;

/** The points of a check as text. */
final class EveningJson {
    private static final JsonMapper MAPPER = JsonMapper.createDefault();
    private static final String POINTS = "points";

    private EveningJson() {}

    static String write(List<Point> points) {
        try {
            return MAPPER.writeValueAsString(
                    Map.of(POINTS, points.stream().map(EveningJson::map).toList()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Map<String, Object> map(Point point) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("matter", point.matter().name());
        map.put("about", point.about());
        point.passage().ifPresent(passage -> map.put("passageId", passage.toString()));
        map.put("proof", point.proof().name());
        map.put("expected", point.expected());
        map.put("seen", point.seen());
        map.put("toDo", point.toDo());
        return map;
    }

    /**
     * Reads what {@link #write} wrote.
     *
     * @throws IllegalArgumentException if it is no such text
     */
    static List<Point> read(String text) {
        try {
            Map<String, Object> body = MAPPER.readValue(text, Argument.mapOf(String.class, Object.class));
            return ((List<?>) body.get(POINTS))
                    .stream().map(each -> point((Map<?, ?>) each)).toList();
        } catch (IOException e) {
            throw new IllegalArgumentException("not the points of an evening check: " + text, e);
        }
    }

    private static Point point(Map<?, ?> map) {
        return new Point(
                Matter.valueOf((String) map.get("matter")),
                (String) map.get("about"),
                Optional.ofNullable((String) map.get("passageId")).map(UUID::fromString),
                Proof.valueOf((String) map.get("proof")),
                (String) map.get("expected"),
                (String) map.get("seen"),
                (String) map.get("toDo"));
    }
}
