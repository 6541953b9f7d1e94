package org.ebbwatch.speed;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.slf4j.LoggerFactory;

/** How long a chart of 2,000 points takes of a cell drained for 48 h, one scan a second: {@code docs/benchmarks/full-path.md}. */
public final class ChartSpeed {
    private static final int SCANS = 48 * 3_600;
    private static final int POINTS = 2_000;
    private static final int ROUNDS = 40;

    private ChartSpeed() {}

    public static void main(String[] arguments) throws IOException {
        ((Logger) LoggerFactory.getLogger("org.flywaydb")).setLevel(Level.WARN);
        Path directory = Files.createTempDirectory("chart");
        try {
            var path = new FullPath(BoardBytes.CHANNELS, directory);
            path.putOn();
            path.run(SCANS);
            List<Double> work = new ArrayList<>();
            int points = 0;
            for (int round = 0; round < ROUNDS; round++) {
                long began = FullPath.workNanos();
                points = path.chart(round % BoardBytes.CHANNELS, POINTS);
                work.add((FullPath.workNanos() - began) / 1e6);
            }
            work.sort(null);
            System.out.printf(
                    "%d points of %d scans: median %.1f ms at work, least %.1f, most %.1f (the first, cold, among them)%n",
                    points, SCANS, work.get(ROUNDS / 2), work.get(0), work.get(ROUNDS - 1));
            path.close();
        } finally {
            Folders.delete(directory);
        }
    }
}
