package org.ebbwatch.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import java.util.UUID;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The database of a service's records, open, and the folder beside it. */
public final class Records implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Records.class);

    private final Path folder;
    private final Database database;
    private final Optional<FactQueue> queue;
    private final FactKeeper keeper;

    private Records(Path folder, Database database, Optional<FactQueue> queue, FactKeeper keeper) {
        this.folder = folder.toAbsolutePath();
        this.database = database;
        this.queue = queue;
        this.keeper = keeper;
    }

    /**
     * Opens or begins records whose database is an H2 file in this folder.
     *
     * @throws StorageException if that fails, another process has them open, or those of this folder are in PostgreSQL
     */
    public static Records inFolder(Path folder) {
        if (Files.exists(folder.resolve(FactQueue.FILE))) {
            throw new StorageException(
                    "the folder " + folder + " belongs to records in PostgreSQL; name that database");
        }
        Database database = H2Database.open(folder);
        return new Records(folder, database, Optional.empty(), new ForcedFacts(database));
    }

    /**
     * Opens or begins records in PostgreSQL. Facts that wait in the folder since an earlier run are in the database when this returns.
     *
     * @param attempts see {@link PostgresDatabase#open}
     * @throws StorageException if that fails, another service has them open, or the folder holds records in H2
     */
    public static Records inPostgres(Path folder, PostgresLogin login, int attempts) {
        if (Files.exists(folder.resolve(H2Database.FILE_NAME))) {
            throw new StorageException(
                    "the folder " + folder + " holds records in H2; passages that are open there would be"
                            + " watched by nobody: end them first, then name another folder");
        }
        Database database = PostgresDatabase.open(login, attempts);
        try {
            Files.createDirectories(folder);
            return queued(folder, database);
        } catch (IOException | SQLException e) {
            database.close();
            throw new StorageException("the records cannot be opened", e);
        } catch (StorageException e) {
            database.close();
            throw e;
        }
    }

    private static Records queued(Path folder, Database database) throws IOException, SQLException {
        Committed committed = Committed.read(database);
        FactQueue queue = FactQueue.open(folder, committed.databaseId());
        try {
            if (queue.tornBytes() > 0) {
                LOG.warn(
                        "{} bytes at the end of {} are no whole batch",
                        queue.tornBytes(),
                        folder.resolve(FactQueue.FILE));
            }
            var keeper = new QueuedFacts(database, queue, committed.number());
            keeper.drainAll();
            return new Records(folder, database, Optional.of(queue), keeper);
        } catch (StorageException e) {
            queue.close();
            throw e;
        }
    }

    private record Committed(long number, UUID databaseId) {
        static Committed read(Database database) throws SQLException {
            return Rows.read(database, "select number, database_id from committed_batch", Committed::of)
                    .get(0);
        }

        private static Committed of(ResultSet row) throws SQLException {
            return new Committed(row.getLong(1), row.getObject(2, UUID.class));
        }
    }

    /** The folder of all that is not in the database; absolute. */
    public Path folder() {
        return folder;
    }

    public Database database() {
        return database;
    }

    /** The journal, whose facts come after the readings that caused them. */
    public JournalStore journal(DurableReadings readings) {
        return new JournalStore(database, readings, keeper);
    }

    @Override
    public void close() {
        try {
            if (queue.isPresent()) {
                queue.get().close();
            }
        } catch (IOException e) {
            throw new StorageException("the queue of facts did not close in order", e);
        } finally {
            database.close();
        }
    }
}
