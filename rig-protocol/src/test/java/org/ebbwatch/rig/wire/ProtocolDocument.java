package org.ebbwatch.rig.wire;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the worked frames and the tables of check values out of {@code docs/rig-protocol.md}. */
final class ProtocolDocument {
    /** A worked frame: what it is, its bytes before and after COBS. */
    record WorkedFrame(String title, byte[] frame, byte[] wire) {
        @Override
        public String toString() {
            return title;
        }
    }

    /** A row of a table of check values. */
    record Row(String left, String right) {}

    private static final Pattern HEX_LINE = Pattern.compile("((?:[0-9A-F]{2} )*[0-9A-F]{2})(?: {2,}\\S.*)?");
    private static final Pattern ROW = Pattern.compile("\\| (.+) \\| (.+) \\|");

    private ProtocolDocument() {}

    static List<WorkedFrame> frames() {
        List<WorkedFrame> frames = new ArrayList<>();
        List<String> lines = lines();
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).equals("```frame")) {
                String title = lines.get(i + 1);
                i += 2;
                StringBuilder frame = new StringBuilder();
                for (; !lines.get(i).equals("wire"); i++) {
                    frame.append(hexOf(lines.get(i))).append(' ');
                }
                StringBuilder wire = new StringBuilder();
                for (i++; !lines.get(i).equals("```"); i++) {
                    wire.append(hexOf(lines.get(i))).append(' ');
                }
                frames.add(new WorkedFrame(title, Bytes.hex(frame.toString()), Bytes.hex(wire.toString())));
            }
        }
        return frames;
    }

    /** The rows of the table below a heading, without its head. */
    static List<Row> table(String heading) {
        List<Row> rows = new ArrayList<>();
        List<String> lines = lines();
        int begin = lines.indexOf(heading);
        if (begin < 0) {
            throw new IllegalStateException("the document has no heading " + heading);
        }
        for (String line : lines.subList(begin + 1, lines.size())) {
            if (line.startsWith("#")) {
                break;
            }
            Matcher row = ROW.matcher(line);
            if (row.matches() && !row.group(1).equals("bytes") && !row.group(1).equals("---")) {
                rows.add(new Row(row.group(1).replace("`", ""), row.group(2).replace("`", "")));
            }
        }
        return rows;
    }

    private static String hexOf(String line) {
        Matcher hex = HEX_LINE.matcher(line);
        if (!hex.matches()) {
            throw new IllegalStateException("not a line of a worked frame: " + line);
        }
        return hex.group(1);
    }

    private static List<String> lines() {
        try {
            return Files.readAllLines(Path.of(System.getProperty("basedir", ""), "../docs/rig-protocol.md"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
