package org.ebbwatch.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.function.LongSupplier;
import org.ebbwatch.passage.BackupSource;

/** Makes backups of a rack at work into a folder of its own beside the records, one at a time. */
public final class Backups {
    private static final DateTimeFormatter NAME = DateTimeFormatter.ofPattern(
                    "'ebbwatch-'uuuuMMdd'T'HHmmss'Z.backup.zip'")
            .withZone(ZoneOffset.UTC);

    private final BackupSource source;
    private final Path folder;
    private final LongSupplier wallMillis;

    /**
     * Backups of these records.
     *
     * @param folder where they go; made where it is missing
     */
    public Backups(BackupSource source, Path folder, LongSupplier wallMillis) {
        this.source = source;
        this.folder = folder;
        this.wallMillis = wallMillis;
    }

    /** A backup that was made. */
    public record Made(Path file, long bytes, String madeUtc) {}

    /**
     * Makes one.
     *
     * @throws IOException if it cannot be made, or one of this very second is there
     */
    public synchronized Made make() throws IOException {
        Instant now = Instant.ofEpochMilli(wallMillis.getAsLong() / 1000 * 1000);
        Path file = folder.resolve(NAME.format(now));
        new Backup(source).write(file, now.toString());
        return new Made(file, Files.size(file), now.toString());
    }
}
