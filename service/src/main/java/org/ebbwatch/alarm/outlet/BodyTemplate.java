package org.ebbwatch.alarm.outlet;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A text with fields of a message in it, each written <code>${name}</code>; {@link MessageField} lists the names. What it is sent
 * as says how their texts are escaped, so that whatever a person named a cell cannot break the text around it.
 */
public final class BodyTemplate {
    private static final Pattern FIELD = Pattern.compile("\\$\\{([^}]*)}");
    private static final int LONGEST = 20_000;

    private final String text;
    private final ContentType type;

    /** What a body is sent as. */
    public enum ContentType {
        JSON("application/json"),
        TEXT("text/plain");

        private final String key;

        ContentType(String key) {
            this.key = key;
        }

        /** As it is written in a rack file. */
        public String key() {
            return key;
        }

        String header() {
            return this == JSON ? key : key + "; charset=utf-8";
        }
    }

    /**
     * Takes a template.
     *
     * @throws IllegalArgumentException if it names a field there is not, or is longer than 20,000 characters
     */
    public BodyTemplate(String text, ContentType type) {
        if (text.length() > LONGEST) {
            throw new IllegalArgumentException("a body has at most " + LONGEST + " characters");
        }
        FIELD.matcher(text).results().map(found -> found.group(1)).forEach(name -> {
            if (!MessageField.keys().contains(name)) {
                throw new IllegalArgumentException("${" + name + "} is no field of a message; there are "
                        + String.join(", ", MessageField.keys()));
            }
        });
        this.text = text;
        this.type = type;
    }

    ContentType type() {
        return type;
    }

    /** The text with the fields filled in; a field that is not given is empty. */
    public String filled(Map<String, String> fields) {
        return FIELD.matcher(text)
                .replaceAll(found -> Matcher.quoteReplacement(escaped(fields.getOrDefault(found.group(1), ""))));
    }

    private String escaped(String value) {
        if (type == ContentType.TEXT) {
            return value;
        }
        StringBuilder out = new StringBuilder(value.length() + 8);
        for (int n = 0; n < value.length(); n++) {
            char letter = value.charAt(n);
            if (letter == '"' || letter == '\\') {
                out.append('\\').append(letter);
            } else if (letter < ' ') {
                out.append("\\u%04x".formatted((int) letter));
            } else {
                out.append(letter);
            }
        }
        return out.toString();
    }
}
