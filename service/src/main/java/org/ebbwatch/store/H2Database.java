package org.ebbwatch.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.h2.api.ErrorCode;
import org.h2.jdbcx.JdbcConnectionPool;

/**
 * One H2 file, {@code ebbwatch.mv.db}, in a directory of its own.
 *
 * <p>Four settings are there for a reason. H2's usual file system gives up the whole database when any thread that reads it
 * is interrupted; the {@code async:} one does not (both are shown by a test). {@code WRITE_DELAY=0} writes at every commit,
 * so that a killed process loses nothing; against a power cut only {@code CHECKPOINT SYNC} helps, which is {@link #force}.
 * {@code MAX_COMPACT_TIME=0} leaves the file as it is on closing: a file is compacted by a person, after a backup.
 * {@code TRACE_LEVEL_FILE=0}: H2 would write a log of its own beside the database, at its worst onto a disk that is full.
 *
 * <p>H2 closes the database when it cannot write it, and so does this class when it cannot force it; the next connection opens
 * it again, by its path: a disk that was taken away and mended is taken up. Never does it make another file then: an empty
 * database below the place where a disk is to be mounted would be kept for ever.
 */
public final class H2Database implements Database {

    static final String FILE_NAME = "ebbwatch.mv.db";

    private static final String FILE = "ebbwatch";
    private static final String SETTINGS =
            ";WRITE_DELAY=0;DB_CLOSE_DELAY=-1;DB_CLOSE_ON_EXIT=FALSE;MAX_COMPACT_TIME=0;TRACE_LEVEL_FILE=0";

    private static final String SUFFIX = ".mv.db";
    private static final String ONLY_WHAT_IS_THERE = ";IFEXISTS=TRUE";
    private static final String USER = "sa";

    private final JdbcConnectionPool connections;

    private H2Database(JdbcConnectionPool connections) {
        this.connections = connections;
    }

    /**
     * Opens the database in this directory, makes both where they are missing, the directory for its owner alone, and applies the migrations.
     *
     * @throws StorageException if that fails, or another process has it open
     */
    public static H2Database open(Path directory) {
        if (directory.toString().contains(";")) {
            throw new StorageException("the path of a database may not contain a semicolon: " + directory);
        }
        try {
            make(directory.toAbsolutePath());
        } catch (IOException e) {
            throw new StorageException("cannot make the directory " + directory, e);
        }
        Path file = directory.toAbsolutePath().resolve(FILE);
        String url = "jdbc:h2:async:" + file + SETTINGS;
        begin(url, file);
        JdbcConnectionPool connections = JdbcConnectionPool.create(url + ONLY_WHAT_IS_THERE, USER, "");
        H2Database database = new H2Database(connections);
        try {
            Flyway.configure()
                    .dataSource(connections)
                    .locations("classpath:db/migration/h2")
                    .load()
                    .migrate();
        } catch (FlywayException e) {
            connections.dispose();
            throw new StorageException("cannot open the database " + file, e);
        }
        return database;
    }

    /** A folder that is made here is its owner's alone; one that is there keeps its permissions. */
    private static void make(Path directory) throws IOException {
        if (Files.isDirectory(directory)) {
            return;
        }
        Files.createDirectories(directory.getParent());
        try {
            Files.createDirectory(
                    directory, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
        } catch (UnsupportedOperationException notHere) {
            Files.createDirectory(directory);
        }
    }

    /** The only connection that may make the file. */
    private static void begin(String url, Path file) {
        Path stored = file.resolveSibling(FILE + SUFFIX);
        try {
            if (Files.exists(stored) && Files.size(stored) == 0) {
                throw new StorageException(damaged(stored, "it is empty"));
            }
            connect(url);
        } catch (SQLException e) {
            throw refused(stored, e);
        } catch (IOException e) {
            throw new StorageException("cannot look at the database " + stored, e);
        }
    }

    /** H2 tells the next one to come that the database which just could not be opened is closed. */
    private static void connect(String url) throws SQLException {
        try {
            DriverManager.getConnection(url, USER, "").close();
        } catch (SQLException e) {
            if (e.getErrorCode() != ErrorCode.DATABASE_IS_CLOSED) {
                throw e;
            }
            DriverManager.getConnection(url, USER, "").close();
        }
    }

    private static StorageException refused(Path stored, SQLException e) {
        var refused =
                switch (e.getErrorCode()) {
                    case ErrorCode.DATABASE_ALREADY_OPEN_1 ->
                        new StorageException("another process has the database " + stored
                                + " open; stop it, or name another folder");
                    case ErrorCode.FILE_CORRUPTED_1 -> new StorageException(damaged(stored, e.getMessage()));
                    default ->
                        new StorageException(
                                Reserve.isFull(stored.getParent())
                                        ? "there is no room on the disk of " + stored + "; make some and start again"
                                        : "cannot open the database " + stored + ": " + e.getMessage());
                };
        refused.initCause(e);
        return refused;
    }

    private static String damaged(Path stored, String how) {
        return "the database " + stored + " is damaged (" + how
                + "). Nobody watches until this is seen to: move the file away,"
                + " do not delete it, and put a backup in its place or start without one; docs/records.md tells how, and what"
                + " can be read back from it";
    }

    @Override
    public DataSource dataSource() {
        return connections;
    }

    @Override
    public void force() throws SQLException {
        try {
            execute("CHECKPOINT SYNC");
        } catch (SQLException e) {
            letGo();
            throw e;
        }
    }

    /** What could not be forced is not on disk, whatever the database believes: it is to be read from disk again. */
    private void letGo() {
        try {
            execute("SHUTDOWN IMMEDIATELY");
        } catch (SQLException closedAlready) {
            // So it is wanted.
        }
    }

    @Override
    public void backUp(Path zip) throws SQLException {
        execute("BACKUP TO '" + zip.toAbsolutePath().toString().replace("'", "''") + "'");
    }

    @Override
    public void close() {
        try {
            execute("SHUTDOWN");
        } catch (SQLException e) {
            throw new StorageException("the database did not close in order", e);
        } finally {
            connections.dispose();
        }
    }

    private void execute(String sql) throws SQLException {
        try (Connection connection = connections.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}
