package org.ebbwatch.evidence.json;

import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import java.util.List;
import java.util.Map;

/**
 * Writes JSON (RFC 8259) for people and machines, always the same way: two spaces a level, short objects and arrays on one
 * line, numbers as {@link NumberText} writes them, NaN as null, and whatever does not show itself on a screen as an escape.
 */
public final class JsonText {
    private static final int LINE = 120;

    private final StringBuilder text = new StringBuilder();

    private JsonText() {}

    /** Maps by their order, lists, strings, numbers, truth values and null, in UTF-8, with a line feed at the end. */
    public static byte[] of(Map<String, ?> map) {
        var json = new JsonText();
        json.value(map, 0);
        return json.text.append('\n').toString().getBytes(StandardCharsets.UTF_8);
    }

    private void value(Object value, int level) {
        boolean nests = value instanceof Map || value instanceof List;
        if (!nests) {
            scalar(text, value);
            return;
        }
        int begin = text.length();
        inline(text, value);
        if (level > 0 && text.length() - text.lastIndexOf("\n") <= LINE) {
            return;
        }
        text.setLength(begin);
        if (value instanceof Map<?, ?> map) {
            members(map, level + 1);
        } else {
            elements((List<?>) value, level + 1);
        }
    }

    private void members(Map<?, ?> map, int level) {
        text.append('{');
        for (Iterator<? extends Map.Entry<?, ?>> left = map.entrySet().iterator(); left.hasNext(); ) {
            Map.Entry<?, ?> member = left.next();
            line(level);
            string(text, member.getKey().toString());
            text.append(": ");
            value(member.getValue(), level);
            text.append(left.hasNext() ? "," : "");
        }
        line(level - 1);
        text.append('}');
    }

    private void elements(List<?> list, int level) {
        text.append('[');
        for (int i = 0; i < list.size(); i++) {
            line(level);
            value(list.get(i), level);
            text.append(i < list.size() - 1 ? "," : "");
        }
        line(level - 1);
        text.append(']');
    }

    private void line(int level) {
        text.append('\n').append("  ".repeat(level));
    }

    private static void inline(StringBuilder into, Object value) {
        String between = "";
        if (value instanceof Map<?, ?> map) {
            into.append('{');
            for (Map.Entry<?, ?> member : map.entrySet()) {
                into.append(between);
                string(into, member.getKey().toString());
                into.append(": ");
                inline(into, member.getValue());
                between = ", ";
            }
            into.append('}');
        } else if (value instanceof List<?> list) {
            into.append('[');
            for (Object element : list) {
                into.append(between);
                inline(into, element);
                between = ", ";
            }
            into.append(']');
        } else {
            scalar(into, value);
        }
    }

    private static void scalar(StringBuilder into, Object value) {
        if (value instanceof Double number) {
            if (number.isNaN()) {
                into.append("null");
            } else {
                NumberText.append(into, number);
            }
        } else if (value == null || value instanceof Integer || value instanceof Long || value instanceof Boolean) {
            into.append(value);
        } else if (value instanceof String string) {
            string(into, string);
        } else {
            throw new IllegalArgumentException("no JSON of " + value.getClass());
        }
    }

    private static void string(StringBuilder into, String string) {
        into.append('"');
        string.codePoints().forEach(point -> {
            if (point == '"' || point == '\\') {
                into.append('\\').append((char) point);
            } else if (!shows(point)) {
                for (char unit : Character.toChars(point)) {
                    into.append(String.format("\\u%04x", (int) unit));
                }
            } else {
                into.appendCodePoint(point);
            }
        });
        into.append('"');
    }

    private static boolean shows(int point) {
        return switch (Character.getType(point)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.SURROGATE,
                    Character.PRIVATE_USE,
                    Character.UNASSIGNED,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR -> false;
            default -> true;
        };
    }
}
