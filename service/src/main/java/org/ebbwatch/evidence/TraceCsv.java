package org.ebbwatch.evidence;

import java.util.List;

/**
 * The columns of {@code trace.csv} (RFC 4180: comma, CRLF after every line, a header). No field is ever quoted, and none can be
 * taken for a formula by a spreadsheet: fields are numbers, times, {@code true}, {@code false} and names of suspicions;
 * what people wrote stands in the record alone. An empty field is a quantity that was not read.
 */
final class TraceCsv {
    static final String PATH = "trace.csv";
    static final List<String> COLUMNS = List.of(
            "sequence",
            "event_millis",
            "wall_utc",
            "volts",
            "expanded_volts",
            "resolution_volts",
            "celsius",
            "ambient_celsius",
            "reference_celsius",
            "bank_celsius",
            "amperes",
            "load_applied",
            "suspect");
    static final String HEADER = String.join(",", COLUMNS);
    /** The last column of a cell that was in a string; others have none. */
    static final String STRING_COLUMN = "string_volts";

    static final String LINE_END = "\r\n";

    private TraceCsv() {}
}
