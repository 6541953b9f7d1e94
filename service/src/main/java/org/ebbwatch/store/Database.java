package org.ebbwatch.store;

import java.nio.file.Path;
import java.sql.SQLException;
import java.sql.SQLFeatureNotSupportedException;
import java.util.Optional;
import javax.sql.DataSource;

/** A database with all migrations applied. Thread-safe. */
public interface Database extends AutoCloseable {

    DataSource dataSource();

    /**
     * Returns when everything committed so far would outlive a power cut. A commit alone need not promise that.
     *
     * @throws SQLException if the database cannot promise it now
     */
    void force() throws SQLException;

    /** Why the database cannot be reached, as far as that is known without asking it; empty while it can. */
    default Optional<String> away() {
        return Optional.empty();
    }

    /**
     * Copies the database into a ZIP file while it is being used; consistent, as of some moment of the copying.
     *
     * @throws SQLException if that fails, or the database is backed up by tools of its own
     */
    default void backUp(Path zip) throws SQLException {
        throw new SQLFeatureNotSupportedException(
                "this database is backed up by its own tools, see docs/postgresql.md");
    }

    /** Closes the database in order; whoever still uses it gets errors. */
    @Override
    void close();
}
