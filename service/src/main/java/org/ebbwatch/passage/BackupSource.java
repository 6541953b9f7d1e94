package org.ebbwatch.passage;

import java.io.IOException;
import java.nio.file.Path;

/**
 * The records of a rack that is at work, to be copied in this order: readings are held, the database is copied while watching goes on,
 * then the readings are copied. What the copy of the database lacks is then in the copy of the readings.
 */
public interface BackupSource {

    /** From now on no reading leaves the file of the newest readings, until they are copied. */
    void holdReadings();

    /**
     * Copies the database into a ZIP file, consistently, however much is written meanwhile.
     *
     * @throws IOException if that fails
     */
    void copyDatabase(Path zip) throws IOException;

    /**
     * Copies the newest readings and lets go of them.
     *
     * @throws IOException if that fails, or they had to be let go of before; then the backup is none
     */
    void copyReadings(Path to) throws IOException;
}
