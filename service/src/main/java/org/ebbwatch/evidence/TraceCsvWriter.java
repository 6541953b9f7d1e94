package org.ebbwatch.evidence;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import org.ebbwatch.evidence.json.NumberText;
import org.ebbwatch.judge.Entry;

/** Writes {@code trace.csv}, a scan a line, so that every scan can be read back bit for bit. */
final class TraceCsvWriter {
    private static final int FLUSH_CHARACTERS = 1 << 16;

    private final OutputStream out;
    private final boolean inString;
    private final StringBuilder lines = new StringBuilder(FLUSH_CHARACTERS + 512);
    private double lastExpanded = Double.NaN;
    private String lastExpandedText = "";

    /** Of a cell that is in a string or not. */
    TraceCsvWriter(OutputStream out, boolean inString) {
        this.out = out;
        this.inString = inString;
        lines.append(TraceCsv.HEADER);
        lines.append(inString ? ',' + TraceCsv.STRING_COLUMN : "").append(TraceCsv.LINE_END);
    }

    void row(long sequence, String wallUtc, Entry.Scan scan) throws IOException {
        lines.append(sequence)
                .append(',')
                .append(scan.eventMillis())
                .append(',')
                .append(wallUtc);
        quantity(scan.volts());
        lines.append(',').append(expanded(scan.expandedVolts()));
        quantity(scan.resolutionVolts());
        quantity(scan.celsius());
        quantity(scan.ambientCelsius());
        quantity(scan.referenceCelsius());
        quantity(scan.bankCelsius());
        quantity(scan.amperes());
        lines.append(',').append(scan.loadApplied());
        lines.append(',').append(scan.suspect().name());
        if (inString) {
            quantity(scan.stringVolts());
        }
        lines.append(TraceCsv.LINE_END);
        if (lines.length() >= FLUSH_CHARACTERS) {
            flush();
        }
    }

    /** Writes what is still held back. */
    void flush() throws IOException {
        out.write(lines.toString().getBytes(StandardCharsets.US_ASCII));
        lines.setLength(0);
    }

    private void quantity(double number) {
        lines.append(',');
        if (!Double.isNaN(number)) {
            NumberText.append(lines, number);
        }
    }

    /** The one figure with 17 digits in every line; it often repeats, for it follows from the voltage. */
    private String expanded(double number) {
        if (number != lastExpanded) {
            lastExpanded = number;
            lastExpandedText = NumberText.of(number);
        }
        return lastExpandedText;
    }
}
