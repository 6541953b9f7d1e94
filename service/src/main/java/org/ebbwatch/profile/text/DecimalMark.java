package org.ebbwatch.profile.text;

import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What stands before the decimals of a number. */
public enum DecimalMark {
    POINT("\\."),
    COMMA(",");

    private final Pattern number;

    DecimalMark(String mark) {
        number = Pattern.compile("([+-]?\\d{1,12})(?:" + mark + "(\\d{1,12}))?([eE][+-]?\\d{1,2})?");
    }

    /** The number written so; NaN for anything that is not exactly one. */
    double read(String text) {
        Matcher parts = number.matcher(text);
        if (!parts.matches()) {
            return Double.NaN;
        }
        String decimals = parts.group(2) == null ? "0" : parts.group(2);
        String exponent = parts.group(3) == null ? "" : parts.group(3);
        return Double.parseDouble(parts.group(1) + '.' + decimals + exponent);
    }

    /** How many digits follow the mark; empty where the text is no number or has an exponent. */
    OptionalInt decimals(String text) {
        Matcher parts = number.matcher(text);
        if (!parts.matches() || parts.group(3) != null) {
            return OptionalInt.empty();
        }
        return OptionalInt.of(parts.group(2) == null ? 0 : parts.group(2).length());
    }
}
