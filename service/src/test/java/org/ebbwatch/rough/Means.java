package org.ebbwatch.rough;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/**
 * What this process uses.
 *
 * @param heapBytes after a collection
 * @param descriptors open files, sockets and the like; -1 where nobody can say
 */
record Means(long heapBytes, int threads, long descriptors) {
    private static final Path DESCRIPTORS = Path.of("/proc/self/fd");
    private static final int COLLECTIONS = 3;

    static Means now() throws IOException {
        for (int i = 0; i < COLLECTIONS; i++) {
            System.gc();
        }
        Runtime runtime = Runtime.getRuntime();
        return new Means(
                runtime.totalMemory() - runtime.freeMemory(),
                (int) Thread.getAllStackTraces().keySet().stream()
                        .filter(Thread::isAlive)
                        .count(),
                descriptorsOpen());
    }

    private static long descriptorsOpen() throws IOException {
        if (!Files.isDirectory(DESCRIPTORS)) {
            return -1;
        }
        try (Stream<Path> open = Files.list(DESCRIPTORS)) {
            return open.count();
        }
    }
}
