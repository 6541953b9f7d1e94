package org.ebbwatch.store;

import java.sql.SQLException;
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

    /** Closes the database in order; whoever still uses it gets errors. */
    @Override
    void close();
}
