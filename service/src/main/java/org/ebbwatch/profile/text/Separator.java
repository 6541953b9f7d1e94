package org.ebbwatch.profile.text;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** What stands between two columns. Blanks around a column are no part of it. */
public enum Separator {
    COMMA("comma", ","),
    SEMICOLON("semicolon", ";"),
    TAB("tab", "\t"),
    /** One blank or tab, or several. */
    SPACE("space", "[ \t]+");

    private final String key;
    private final Pattern pattern;

    Separator(String key, String expression) {
        this.key = key;
        this.pattern = Pattern.compile(expression);
    }

    /** The columns of a line, each without blanks around it. */
    List<String> split(String line) {
        return Arrays.stream(pattern.split(this == SPACE ? line.strip() : line, -1))
                .map(String::strip)
                .toList();
    }

    /** The words by which profiles name them. */
    public static List<String> keys() {
        return Arrays.stream(values()).map(separator -> separator.key).toList();
    }

    /** The one of this word. */
    public static Optional<Separator> ofKey(String key) {
        return Arrays.stream(values())
                .filter(separator -> separator.key.equals(key))
                .findFirst();
    }
}
