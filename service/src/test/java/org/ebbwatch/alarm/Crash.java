package org.ebbwatch.alarm;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** What is left of records when their service is killed. */
final class Crash {
    private Crash() {}

    /** The files as they lie on disk at this moment, in a folder of their own: nothing was closed, nothing was flushed. */
    static void copy(Path records, Path to) {
        try (Stream<Path> found = Files.list(records)) {
            Files.createDirectories(to);
            List<Path> files = found.filter(Files::isRegularFile).toList();
            for (Path file : files) {
                Files.copy(file, to.resolve(file.getFileName()));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
