package org.ebbwatch.rough;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;

/** A file of what a campaign has done so far, a line for each part, so that an interrupted one goes on where it was. */
final class Progress {
    private final Path file;

    Progress(Path file) throws IOException {
        this.file = file;
        if (file.toAbsolutePath().getParent() != null) {
            Files.createDirectories(file.toAbsolutePath().getParent());
        }
    }

    /** The lines so far. */
    synchronized List<String> done() throws IOException {
        return Files.exists(file) ? new ArrayList<>(Files.readAllLines(file)) : new ArrayList<>();
    }

    synchronized void add(String line) throws IOException {
        Files.writeString(file, line + System.lineSeparator(), StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    }
}
