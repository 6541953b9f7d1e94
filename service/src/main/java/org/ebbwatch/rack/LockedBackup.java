package org.ebbwatch.rack;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import org.ebbwatch.acquire.RackLock;
import org.ebbwatch.passage.BackupSource;

/** The records of a rack at work as a backup needs them: the short steps under the rack's lock, the long one beside it. */
final class LockedBackup implements BackupSource {
    private final BackupSource storage;
    private final RackLock lock;

    LockedBackup(BackupSource storage, RackLock lock) {
        this.storage = storage;
        this.lock = lock;
    }

    @Override
    public void holdReadings() {
        lock.run(storage::holdReadings);
    }

    @Override
    public void copyDatabase(Path zip) throws IOException {
        storage.copyDatabase(zip);
    }

    @Override
    public void copyReadings(Path to) throws IOException {
        try {
            lock.run(() -> {
                try {
                    storage.copyReadings(to);
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }
}
