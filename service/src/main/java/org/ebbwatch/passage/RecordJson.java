package org.ebbwatch.passage;

import io.micronaut.core.type.Argument;
import io.micronaut.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Writes the judge's records as JSON objects and reads them back, component by component. A NaN is written as null.
 * Components may be numbers, truth values, strings, enums and records of those, or any of these as an Optional, which is left
 * out where it is empty.
 */
public final class RecordJson {
    private static final JsonMapper MAPPER = JsonMapper.createDefault();

    private RecordJson() {}

    static String write(Record value) {
        try {
            return MAPPER.writeValueAsString(toMap(value));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Reads what {@link #write} wrote.
     *
     * @throws IllegalArgumentException if the text is no such record
     */
    static <R extends Record> R read(Class<R> type, String text) {
        try {
            return fromMap(type, MAPPER.readValue(text, Argument.mapOf(String.class, Object.class)));
        } catch (IOException e) {
            throw new IllegalArgumentException("not a " + type.getSimpleName() + ": " + text, e);
        }
    }

    /** The record as what a JSON object of it holds, in the order of its components. */
    public static Map<String, Object> toMap(Record value) {
        Map<String, Object> map = new LinkedHashMap<>();
        for (RecordComponent component : value.getClass().getRecordComponents()) {
            Object held = get(component, value);
            if (held instanceof Optional<?> maybe) {
                maybe.ifPresent(it -> map.put(component.getName(), written(it)));
            } else {
                map.put(component.getName(), written(held));
            }
        }
        return map;
    }

    private static Object written(Object value) {
        if (value instanceof Record inner) {
            return toMap(inner);
        }
        if (value instanceof Enum<?> constant) {
            return constant.name();
        }
        if (value instanceof Double number && number.isNaN()) {
            return null;
        }
        return value;
    }

    private static Object get(RecordComponent component, Record value) {
        try {
            var accessor = component.getAccessor();
            accessor.setAccessible(true);
            return accessor.invoke(value);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    /**
     * Makes a record of what {@link #toMap} gave, or a JSON object of it holds; what the record does not know is ignored.
     *
     * @throws IllegalArgumentException if the map lacks a component, or one cannot be what it is
     */
    public static <R extends Record> R fromMap(Class<R> type, Map<?, ?> map) {
        RecordComponent[] components = type.getRecordComponents();
        Class<?>[] types = new Class<?>[components.length];
        Object[] values = new Object[components.length];
        for (int i = 0; i < components.length; i++) {
            types[i] = components[i].getType();
            values[i] = component(components[i], map, type.getSimpleName());
        }
        try {
            var constructor = type.getDeclaredConstructor(types);
            constructor.setAccessible(true);
            return constructor.newInstance(values);
        } catch (ReflectiveOperationException e) {
            throw new IllegalArgumentException("not a " + type.getSimpleName() + ": " + map, e);
        }
    }

    private static Object component(RecordComponent component, Map<?, ?> map, String record) {
        String name = component.getName();
        String where = record + '.' + name;
        if (component.getType() == Optional.class) {
            Class<?> held = (Class<?>) ((ParameterizedType) component.getGenericType()).getActualTypeArguments()[0];
            return map.containsKey(name) ? Optional.of(read(held, map.get(name), where)) : Optional.empty();
        }
        if (!map.containsKey(name)) {
            throw new IllegalArgumentException(record + " needs " + name);
        }
        return read(component.getType(), map.get(name), where);
    }

    private static Object read(Class<?> type, Object value, String where) {
        if (type == double.class || type == Double.class) {
            return value == null ? Double.NaN : number(value, where).doubleValue();
        }
        if (type == long.class) {
            return number(value, where).longValue();
        }
        if (type == int.class || type == Integer.class) {
            return number(value, where).intValue();
        }
        if (type.isRecord() && value instanceof Map<?, ?> inner) {
            return fromMap(type.asSubclass(Record.class), inner);
        }
        if (type.isEnum() && value instanceof String name) {
            for (Object constant : type.getEnumConstants()) {
                if (((Enum<?>) constant).name().equals(name)) {
                    return constant;
                }
            }
        } else if ((type == String.class && value instanceof String)
                || (type == boolean.class && value instanceof Boolean)) {
            return value;
        }
        throw new IllegalArgumentException(where + " cannot be " + value);
    }

    private static Number number(Object value, String where) {
        if (value instanceof Number number) {
            return number;
        }
        throw new IllegalArgumentException(where + " is no number: " + value);
    }
}
