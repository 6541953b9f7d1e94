package org.ebbwatch.rough;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.ebbwatch.acquire.SystemHostClock;

/**
 * Lets an accelerated rack work for many nights, and tells once a night what it uses. Arguments: nights (14), cells (8). The
 * store is held against the line that the trace's own figures predict (docs/benchmarks/trace.md) and against its first nights.
 */
final class LongRun {
    private static final long DAY_MILLIS = 86_400_000;

    private LongRun() {}

    public static void main(String[] arguments) throws Exception {
        int nights = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 14;
        int cells = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 8;
        Path records = Files.createTempDirectory("ebbwatch-long");
        System.out.println(
                "| night | heap, MiB | threads | descriptors | store, MiB | grown, MiB | bytes a pair | released |");
        System.out.println("| --- | --- | --- | --- | --- | --- | --- | --- |");
        try (LongRack rack = new LongRack(records, cells, new SystemHostClock())) {
            long before = rack.storeBytes();
            for (int night = 1; night <= nights; night++) {
                rack.runTo(night * DAY_MILLIS);
                Means means = Means.now();
                long store = rack.storeBytes();
                double pairs = DAY_MILLIS / 1000.0 * rack.channels();
                System.out.printf(
                        Locale.ROOT,
                        "| %d | %.1f | %d | %d | %.1f | %.1f | %.2f | %d |%n",
                        night,
                        means.heapBytes() / 1048576.0,
                        means.threads(),
                        means.descriptors(),
                        store / 1048576.0,
                        (store - before) / 1048576.0,
                        (store - before) / pairs,
                        rack.released());
                before = store;
            }
        }
    }
}
