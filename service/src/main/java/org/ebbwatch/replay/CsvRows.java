package org.ebbwatch.replay;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.replay.Recording.Unreadable;

/**
 * Reads comma-separated rows (source: RFC 4180): fields may be quoted, a quote within quotes is doubled, a quoted field may
 * span lines. Lines may end in CRLF or LF.
 */
final class CsvRows {
    private static final int END = -1;

    private final String text;
    private int place;
    private int line = 1;
    private int rowLine = 1;
    private int ahead;

    CsvRows(String text) {
        this.text = text;
        this.place = text.startsWith("\uFEFF") ? 1 : 0;
        this.ahead = charAhead();
    }

    private int charAhead() {
        return place < text.length() ? text.charAt(place) : END;
    }

    /** The line the last row began on. */
    int line() {
        return rowLine;
    }

    /** The next row that is not an empty line; null at the end. */
    List<String> next() throws Unreadable {
        while (ahead == '\n' || ahead == '\r') {
            advance();
        }
        rowLine = line;
        if (ahead == END) {
            return null;
        }
        List<String> fields = new ArrayList<>();
        fields.add(field());
        while (ahead == ',') {
            advance();
            fields.add(field());
        }
        return fields;
    }

    private String field() throws Unreadable {
        var field = new StringBuilder();
        if (ahead == '"') {
            quoted(field);
        } else {
            while (!endsField()) {
                field.append((char) ahead);
                advance();
            }
        }
        return field.toString().strip();
    }

    private void quoted(StringBuilder field) throws Unreadable {
        int began = line;
        advance();
        while (true) {
            if (ahead == END) {
                throw new Unreadable("line " + began + ": a quote is opened and never closed");
            }
            boolean quote = ahead == '"';
            int seen = ahead;
            advance();
            if (quote && ahead != '"') {
                break;
            }
            field.append((char) seen);
            if (quote) {
                advance();
            }
        }
        if (!endsField()) {
            throw new Unreadable("line " + line + ": text follows a closed quote");
        }
    }

    private boolean endsField() {
        return ahead == ',' || ahead == '\n' || ahead == '\r' || ahead == END;
    }

    private void advance() {
        if (ahead == '\n') {
            line++;
        }
        place++;
        ahead = charAhead();
    }
}
