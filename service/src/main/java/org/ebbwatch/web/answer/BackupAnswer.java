package org.ebbwatch.web.answer;

import io.micronaut.serde.annotation.Serdeable;
import org.ebbwatch.archive.Backups;

/**
 * A backup that was made.
 *
 * @param file its path on the machine of the service
 * @param bytes its length
 * @param madeUtc RFC 3339
 */
@Serdeable
public record BackupAnswer(String file, long bytes, String madeUtc) {

    /** Of a backup. */
    public static BackupAnswer of(Backups.Made made) {
        return new BackupAnswer(made.file().toString(), made.bytes(), made.madeUtc());
    }
}
