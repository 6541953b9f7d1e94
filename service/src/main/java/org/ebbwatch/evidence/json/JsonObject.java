package org.ebbwatch.evidence.json;

import io.micronaut.core.type.Argument;
import io.micronaut.json.JsonMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** A JSON object being read. Every method throws {@link IllegalArgumentException}, naming the key, where it is another thing. */
public record JsonObject(Map<?, ?> map) {
    private static final JsonMapper MAPPER = JsonMapper.createDefault();

    public static JsonObject read(byte[] text) {
        try {
            return new JsonObject(MAPPER.readValue(text, Argument.mapOf(String.class, Object.class)));
        } catch (IOException e) {
            throw new IllegalArgumentException("it is no JSON object", e);
        }
    }

    public String text(String key) {
        return get(key, String.class);
    }

    public boolean truth(String key) {
        return get(key, Boolean.class);
    }

    /** A whole number. */
    public long number(String key) {
        Number number = get(key, Number.class);
        if (!(number instanceof Integer) && !(number instanceof Long)) {
            throw new IllegalArgumentException(key + " is no whole number");
        }
        return number.longValue();
    }

    /** A number; NaN where it is null. */
    public double decimal(String key) {
        if (map.containsKey(key) && map.get(key) == null) {
            return Double.NaN;
        }
        return get(key, Number.class).doubleValue();
    }

    public boolean isNull(String key) {
        return map.get(key) == null;
    }

    public JsonObject object(String key) {
        return new JsonObject(get(key, Map.class));
    }

    public List<JsonObject> objects(String key) {
        List<JsonObject> objects = new ArrayList<>();
        for (Object element : get(key, List.class)) {
            if (!(element instanceof Map<?, ?> inner)) {
                throw new IllegalArgumentException(key + " holds what is no object");
            }
            objects.add(new JsonObject(inner));
        }
        return objects;
    }

    public List<String> texts(String key) {
        List<String> texts = new ArrayList<>();
        for (Object element : get(key, List.class)) {
            if (!(element instanceof String text)) {
                throw new IllegalArgumentException(key + " holds what is no text");
            }
            texts.add(text);
        }
        return texts;
    }

    private <T> T get(String key, Class<T> type) {
        Object value = map.get(key);
        if (!type.isInstance(value)) {
            throw new IllegalArgumentException(
                    value == null ? "it lacks " + key : key + " is no " + type.getSimpleName());
        }
        return type.cast(value);
    }
}
