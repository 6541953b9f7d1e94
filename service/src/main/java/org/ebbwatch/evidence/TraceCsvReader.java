package org.ebbwatch.evidence;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.regex.Pattern;
import org.ebbwatch.evidence.container.DamageException;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Entry.Suspicion;

/** Reads {@code trace.csv} as {@link TraceCsvWriter} writes it and nothing else; a line at a time, none above 512 bytes. */
final class TraceCsvReader {
    private static final int LINE_MOST = 512;
    private static final Pattern WALL_UTC = Pattern.compile("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d\\.\\d{3}Z");

    private final InputStream in;
    private final byte[] line = new byte[LINE_MOST];
    private final String[] fields;
    private long lineNumber;

    /**
     * A line of the trace.
     *
     * @param sequence the scan's place in the journal
     * @param wallUtc its label
     */
    record Row(long sequence, String wallUtc, Entry.Scan scan) {}

    /**
     * Begins to read.
     *
     * @throws DamageException if the first line is not the header
     */
    TraceCsvReader(InputStream in) throws IOException {
        this.in = new BufferedInputStream(in, 1 << 16);
        String header = readLine();
        boolean inString = (TraceCsv.HEADER + ',' + TraceCsv.STRING_COLUMN).equals(header);
        if (!inString && !TraceCsv.HEADER.equals(header)) {
            throw damaged("does not hold the columns of a trace");
        }
        this.fields = new String[TraceCsv.COLUMNS.size() + (inString ? 1 : 0)];
    }

    /** The next line; empty at the end. */
    Optional<Row> next() throws IOException {
        String text = readLine();
        if (text == null) {
            return Optional.empty();
        }
        split(text);
        try {
            return Optional.of(new Row(Long.parseLong(fields[0]), wallUtc(fields[2]), scan()));
        } catch (IllegalArgumentException e) {
            throw damaged("holds what no trace holds (" + e.getMessage() + ")");
        }
    }

    private Entry.Scan scan() {
        return new Entry.Scan(
                Long.parseLong(fields[1]),
                quantity(3),
                quantity(4),
                quantity(5),
                quantity(10),
                quantity(6),
                quantity(7),
                quantity(8),
                quantity(9),
                truth(fields[11]),
                Suspicion.valueOf(fields[12]),
                fields.length > TraceCsv.COLUMNS.size() ? quantity(13) : Double.NaN);
    }

    private double quantity(int field) {
        String text = fields[field];
        if (text.isEmpty()) {
            return Double.NaN;
        }
        for (int i = 0; i < text.length(); i++) {
            if ("0123456789.-+E".indexOf(text.charAt(i)) < 0) {
                throw new IllegalArgumentException("no number: " + text);
            }
        }
        double number = Double.parseDouble(text);
        if (Double.isInfinite(number)) {
            throw new IllegalArgumentException("too large a number: " + text);
        }
        return number;
    }

    private static boolean truth(String text) {
        if (!text.equals("true") && !text.equals("false")) {
            throw new IllegalArgumentException("neither true nor false: " + text);
        }
        return text.equals("true");
    }

    private static String wallUtc(String text) {
        if (!WALL_UTC.matcher(text).matches()) {
            throw new IllegalArgumentException("no time: " + text);
        }
        return text;
    }

    private void split(String text) throws DamageException {
        int begin = 0;
        for (int field = 0; field < fields.length; field++) {
            int comma = text.indexOf(',', begin);
            boolean last = field == fields.length - 1;
            if (last != (comma < 0)) {
                throw damaged("does not have " + fields.length + " fields");
            }
            fields[field] = text.substring(begin, last ? text.length() : comma);
            begin = comma + 1;
        }
    }

    /** Null at the end. */
    private String readLine() throws IOException {
        lineNumber++;
        int length = 0;
        int next = in.read();
        if (next < 0) {
            return null;
        }
        while (next != '\r') {
            if (next < 0 || length == LINE_MOST) {
                throw damaged("does not end as a line of the trace does");
            }
            line[length++] = (byte) next;
            next = in.read();
        }
        if (in.read() != '\n') {
            throw damaged("does not end as a line of the trace does");
        }
        return new String(line, 0, length, StandardCharsets.ISO_8859_1);
    }

    private DamageException damaged(String what) {
        return new DamageException(TraceCsv.PATH, "line " + lineNumber + " " + what);
    }
}
