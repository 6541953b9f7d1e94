package org.ebbwatch.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.h2.jdbcx.JdbcConnectionPool;

/**
 * One H2 file, {@code ebbwatch.mv.db}, in a directory of its own.
 *
 * <p>Three settings are there for a reason. H2's usual file system gives up the whole database when any thread that reads it
 * is interrupted; the {@code async:} one does not (both are shown by a test). {@code WRITE_DELAY=0} writes at every commit,
 * so that a killed process loses nothing; against a power cut only {@code CHECKPOINT SYNC} helps, which is {@link #force}.
 * {@code MAX_COMPACT_TIME=0} leaves the file as it is on closing: a file is compacted by a person, after a backup.
 */
public final class H2Database implements Database {

    static final String FILE_NAME = "ebbwatch.mv.db";

    private static final String FILE = "ebbwatch";
    private static final String SETTINGS = ";WRITE_DELAY=0;DB_CLOSE_DELAY=-1;DB_CLOSE_ON_EXIT=FALSE;MAX_COMPACT_TIME=0";

    private final JdbcConnectionPool connections;

    private H2Database(JdbcConnectionPool connections) {
        this.connections = connections;
    }

    /**
     * Opens the database in this directory, makes both where they are missing, and applies the migrations.
     *
     * @throws StorageException if that fails, or another process has it open
     */
    public static H2Database open(Path directory) {
        if (directory.toString().contains(";")) {
            throw new StorageException("the path of a database may not contain a semicolon: " + directory);
        }
        try {
            Files.createDirectories(directory);
        } catch (IOException e) {
            throw new StorageException("cannot make the directory " + directory, e);
        }
        Path file = directory.toAbsolutePath().resolve(FILE);
        JdbcConnectionPool connections = JdbcConnectionPool.create("jdbc:h2:async:" + file + SETTINGS, "sa", "");
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

    @Override
    public DataSource dataSource() {
        return connections;
    }

    @Override
    public void force() throws SQLException {
        execute("CHECKPOINT SYNC");
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
