package org.ebbwatch.passage;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import org.ebbwatch.store.Database;
import org.ebbwatch.trace.TraceStore;

/** Database and newest readings as a backup copies them. */
final class StoredBackup implements BackupSource {
    private final Database database;
    private final TraceStore trace;

    StoredBackup(Database database, TraceStore trace) {
        this.database = database;
        this.trace = trace;
    }

    @Override
    public void holdReadings() {
        trace.holdTail();
    }

    @Override
    public void copyDatabase(Path zip) throws IOException {
        try {
            database.backUp(zip);
        } catch (SQLException e) {
            throw new IOException("the database cannot be copied: " + e.getMessage(), e);
        }
    }

    @Override
    public void copyReadings(Path to) throws IOException {
        trace.copyTail(to);
    }
}
