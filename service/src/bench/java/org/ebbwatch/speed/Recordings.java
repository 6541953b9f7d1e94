package org.ebbwatch.speed;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.trace.codec.Samples;
import org.ebbwatch.trace.codec.ValueKinds;

/** Recordings of real cells as segments of counts of 0.1 mV and 1 mK. */
final class Recordings {
    private Recordings() {}

    /** Segments of at most so many samples; empty where there is no such file. */
    static List<Samples> segments(Path recording, int perSegment) throws IOException {
        List<Samples> segments = new ArrayList<>();
        if (!Files.exists(recording)) {
            return segments;
        }
        List<String[]> rows = new ArrayList<>();
        for (String line : Files.readAllLines(recording)) {
            String[] row = line.split(",", -1);
            if (!row[0].equals("t_s") && !row[1].isEmpty() && !row[3].isEmpty()) {
                rows.add(row);
            }
        }
        for (int from = 0; from < rows.size(); from += perSegment) {
            int count = Math.min(perSegment, rows.size() - from);
            Samples samples = new Samples(
                    ValueKinds.COUNTS_WITHOUT_AMPERES,
                    count,
                    new long[count],
                    new long[count],
                    new byte[count],
                    new int[count],
                    new int[count],
                    new int[0]);
            for (int i = 0; i < count; i++) {
                String[] row = rows.get(from + i);
                samples.scans()[i] = (long) from + i;
                samples.eventMillis()[i] = Math.round(Double.parseDouble(row[0]) * 1_000);
                samples.volts()[i] = (int) Math.round(Double.parseDouble(row[1]) * 10_000);
                samples.celsius()[i] = (int) Math.round(Double.parseDouble(row[3]) * 1_000);
            }
            segments.add(samples);
        }
        return segments;
    }
}
