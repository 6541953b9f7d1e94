package org.ebbwatch.bench;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/**
 * What this process holds at a moment. Linux only.
 *
 * @param threads alive
 * @param descriptors open
 * @param heapBytes used after a collection
 * @param residentBytes in memory, of the process as a whole
 */
record Held(int threads, long descriptors, long heapBytes, long residentBytes) {
    private static final Path PROCESS = Path.of("/proc/self");

    static Held now() throws IOException {
        System.gc();
        return new Held(
                ManagementFactory.getThreadMXBean().getThreadCount(),
                openDescriptors(),
                ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed(),
                resident());
    }

    private static long openDescriptors() throws IOException {
        try (Stream<Path> open = Files.list(PROCESS.resolve("fd"))) {
            return open.count();
        }
    }

    private static long resident() throws IOException {
        return Files.readAllLines(PROCESS.resolve("status")).stream()
                .filter(line -> line.startsWith("VmRSS:"))
                .map(line -> line.replaceAll("\\D", ""))
                .mapToLong(Long::parseLong)
                .map(kibibytes -> kibibytes << 10)
                .findFirst()
                .orElse(0);
    }
}
