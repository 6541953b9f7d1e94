package org.ebbwatch.rough;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;

/** A disk on which forcing takes its time: a library put before the C library's {@code fsync} and {@code fdatasync}. For Linux with gcc. */
final class SlowDisk {
    private static final String SOURCE =
            """
            #define _GNU_SOURCE
            #include <dlfcn.h>
            #include <stdlib.h>
            #include <time.h>
            static void wait_so_long(void) {
                const char *millis = getenv("FORCE_TAKES_MILLIS");
                long n = millis ? atol(millis) : 0;
                struct timespec t = {n / 1000, n % 1000 * 1000000};
                nanosleep(&t, 0);
            }
            int fsync(int fd) {
                wait_so_long();
                return ((int (*)(int)) dlsym(RTLD_NEXT, "fsync"))(fd);
            }
            int fdatasync(int fd) {
                wait_so_long();
                return ((int (*)(int)) dlsym(RTLD_NEXT, "fdatasync"))(fd);
            }
            """;

    private SlowDisk() {}

    /** The environment of a process for which each forcing takes so long; empty where it cannot be made here. */
    static Optional<Map<String, String>> environment(Path folder, long forceMillis)
            throws IOException, InterruptedException {
        Path source = Files.writeString(folder.resolve("slow.c"), SOURCE);
        Path library = folder.resolve("slow.so");
        try {
            Process compiler = new ProcessBuilder(
                            "gcc", "-shared", "-fPIC", "-o", library.toString(), source.toString(), "-ldl")
                    .redirectErrorStream(true)
                    .start();
            return compiler.waitFor() == 0
                    ? Optional.of(
                            Map.of("LD_PRELOAD", library.toString(), "FORCE_TAKES_MILLIS", Long.toString(forceMillis)))
                    : Optional.empty();
        } catch (IOException noCompiler) {
            return Optional.empty();
        }
    }
}
