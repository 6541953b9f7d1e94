package org.ebbwatch.replay;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A recording as comma-separated text (RFC 4180) with a header row.
 *
 * <p>Columns, in any order, by the first word of their name: {@code seconds} (or {@code t_s}) and {@code volts} ({@code v_V}) are
 * needed; {@code amperes} ({@code i_discharge_A}), {@code celsius} ({@code t_cell_C}) and {@code ambient}
 * ({@code t_ambient_C}) may be there; others are left out. An empty field was not read. Seconds must rise.
 *
 * @param rows in order of time
 * @param resolutionVolts the step of the volts column, from its decimals
 */
public record Recording(List<Row> rows, double resolutionVolts) {
    private static final Map<String, List<String>> NAMES = Map.of(
            "seconds", List.of("seconds", "t_s"),
            "volts", List.of("volts", "v_v"),
            "amperes", List.of("amperes", "i_discharge_a"),
            "celsius", List.of("celsius", "t_cell_c"),
            "ambient", List.of("ambient", "ambient_celsius", "t_ambient_c"));

    private static final Pattern NUMBER =
            Pattern.compile("[+-]?(?=\\.?\\d)\\d*(?:\\.(?<fraction>\\d*))?(?<power>[eE][+-]?\\d+)?");

    public Recording {
        rows = List.copyOf(rows);
    }

    /** One row; NaN where nothing was read. */
    public record Row(double seconds, double volts, double amperes, double celsius, double ambient) {}

    /** A recording cannot be read; the message says which line and why. */
    public static final class Unreadable extends Exception {
        private static final long serialVersionUID = 1;

        Unreadable(String message) {
            super(message);
        }
    }

    /**
     * Reads a recording.
     *
     * @throws Unreadable with the line and what is wrong with it
     */
    public static Recording parse(String text) throws Unreadable {
        var csv = new CsvRows(text);
        List<String> header = csv.next();
        if (header == null) {
            throw new Unreadable("line 1: the recording is empty; a header row is needed");
        }
        int seconds = column(header, "seconds", true);
        int volts = column(header, "volts", true);
        int amperes = column(header, "amperes", false);
        int celsius = column(header, "celsius", false);
        int ambient = column(header, "ambient", false);
        List<Row> rows = new ArrayList<>();
        int decimals = 0;
        for (List<String> fields = csv.next(); fields != null; fields = csv.next()) {
            int line = csv.line();
            if (fields.size() != header.size()) {
                throw new Unreadable(
                        "line " + line + ": " + fields.size() + " fields where the header has " + header.size());
            }
            var row = new Row(
                    number(fields, seconds, line),
                    number(fields, volts, line),
                    number(fields, amperes, line),
                    number(fields, celsius, line),
                    number(fields, ambient, line));
            double before = rows.isEmpty()
                    ? Double.NEGATIVE_INFINITY
                    : rows.get(rows.size() - 1).seconds();
            if (!(row.seconds() >= before)) {
                throw new Unreadable(
                        "line " + line + ": seconds must be there and rise, " + row.seconds() + " follows " + before);
            }
            decimals = Math.max(decimals, decimals(fields.get(volts)));
            rows.add(row);
        }
        return new Recording(rows, StrictMath.pow(10, -decimals));
    }

    private static int column(List<String> header, String what, boolean needed) throws Unreadable {
        for (int i = 0; i < header.size(); i++) {
            if (NAMES.get(what).contains(header.get(i).strip().toLowerCase(Locale.ROOT))) {
                return i;
            }
        }
        if (needed) {
            throw new Unreadable("line 1: no column " + what + " among " + header + "; call it "
                    + String.join(" or ", NAMES.get(what)));
        }
        return -1;
    }

    private static double number(List<String> fields, int column, int line) throws Unreadable {
        if (column < 0 || fields.get(column).isEmpty()) {
            return Double.NaN;
        }
        if (!NUMBER.matcher(fields.get(column)).matches()) {
            throw new Unreadable("line " + line + ", field " + (column + 1) + ": \"" + fields.get(column)
                    + "\" is no number; use a decimal point");
        }
        return Double.parseDouble(fields.get(column));
    }

    private static int decimals(String field) {
        Matcher number = NUMBER.matcher(field);
        boolean plain = number.matches() && number.group("power") == null && number.group("fraction") != null;
        return plain ? number.group("fraction").length() : 0;
    }
}
