package org.ebbwatch.evidence;

import java.util.ArrayList;
import java.util.List;

/**
 * The columns of {@code trace.csv} (RFC 4180: comma, CRLF after every line, a header). No field is ever quoted, and none can be
 * taken for a formula by a spreadsheet: fields are numbers, times, {@code true}, {@code false} and names of suspicions;
 * what people wrote stands in the record alone. An empty field is a quantity that was not read.
 */
final class TraceCsv {
    static final String PATH = "trace.csv";

    /**
     * One column.
     *
     * @param name as in the header
     * @param type in the words of Table Schema (Frictionless, version 1)
     * @param unit by UCUM; empty: none
     */
    record Column(String name, String type, String unit, String meaning) {}

    private static final List<Column> OF_EVERY_CELL = List.of(
            new Column("sequence", "integer", "", "place in the passage's journal, from 1"),
            new Column("event_millis", "integer", "ms", "event time by the board's own clock"),
            new Column("wall_utc", "datetime", "", "label: wall time by the host's clock"),
            number("volts", "V", "at the cell's terminals"),
            number("expanded_volts", "V", "expanded uncertainty of volts, k = 2"),
            number("resolution_volts", "V", "the step of one count"),
            number("celsius", "Cel", "the cell's own sensor"),
            number("ambient_celsius", "Cel", "the rack's ambient sensor"),
            number("reference_celsius", "Cel", "the dummy cell in the watch container"),
            number("bank_celsius", "Cel", "the resistor bank's own sensor"),
            number("amperes", "A", "through the load, discharge positive"),
            new Column("load_applied", "boolean", "", "what the board says its load switch does"),
            new Column("suspect", "string", "", "what the board says against its own reading"));

    /** The last column of a cell that was in a string; others have none. */
    static final String STRING_COLUMN = "string_volts";

    static final List<String> COLUMNS = OF_EVERY_CELL.stream().map(Column::name).toList();
    static final String HEADER = String.join(",", COLUMNS);
    static final String LINE_END = "\r\n";

    private TraceCsv() {}

    /** All columns of a trace. */
    static List<Column> columns(boolean inString) {
        List<Column> columns = new ArrayList<>(OF_EVERY_CELL);
        if (inString) {
            columns.add(number(STRING_COLUMN, "V", "across all cells of the string"));
        }
        return columns;
    }

    private static Column number(String name, String unit, String meaning) {
        return new Column(name, "number", unit, meaning);
    }
}
