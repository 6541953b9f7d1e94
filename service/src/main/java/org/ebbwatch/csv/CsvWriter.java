package org.ebbwatch.csv;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * Writes a table as RFC 4180 has it: UTF-8, comma, CRLF after every line, quotes doubled. A field that a spreadsheet would take for a
 * formula gets an apostrophe in front: one that begins with {@code = + - @}, a tab or a carriage
 * return, unless it is a plain number. Holds one line at a time.
 */
public final class CsvWriter {
    private static final String BEGINS_FORMULA = "=+-@\t\r";
    private static final String NUMBER = "-?\\d+(\\.\\d+)?([eE][-+]?\\d+)?";

    private final OutputStream out;
    private final StringBuilder line = new StringBuilder();

    /** Writes to {@code out}, which the caller buffers and closes. */
    public CsvWriter(OutputStream out) {
        this.out = out;
    }

    /** Writes a line; a null is an empty field. */
    public void line(List<?> fields) throws IOException {
        line.setLength(0);
        String between = "";
        for (Object field : fields) {
            line.append(between);
            append(field == null ? "" : field.toString());
            between = ",";
        }
        line.append("\r\n");
        out.write(line.toString().getBytes(StandardCharsets.UTF_8));
    }

    private void append(String field) {
        String harmless = isFormula(field) ? '\'' + field : field;
        boolean quoted = harmless.indexOf(',') >= 0
                || harmless.indexOf('"') >= 0
                || harmless.indexOf('\r') >= 0
                || harmless.indexOf('\n') >= 0;
        line.append(quoted ? '"' + harmless.replace("\"", "\"\"") + '"' : harmless);
    }

    private static boolean isFormula(String field) {
        return !field.isEmpty() && BEGINS_FORMULA.indexOf(field.charAt(0)) >= 0 && !field.matches(NUMBER);
    }
}
