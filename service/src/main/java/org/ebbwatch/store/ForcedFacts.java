package org.ebbwatch.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;

/** Commits changes and then forces the database to disk. */
final class ForcedFacts implements FactKeeper {
    private final Database database;
    private boolean unforced;

    ForcedFacts(Database database) {
        this.database = database;
    }

    @Override
    public List<String> keep(List<Change> waiting) throws SQLException {
        List<String> refused;
        try (Connection connection = database.dataSource().getConnection()) {
            connection.setAutoCommit(false);
            try {
                refused = Change.applyAll(connection, waiting);
                connection.commit();
            } catch (SQLException e) {
                connection.rollback();
                throw e;
            }
        }
        waiting.clear();
        unforced = true;
        database.force();
        unforced = false;
        return refused;
    }

    @Override
    public boolean isBehind() {
        return unforced;
    }

    @Override
    public Optional<String> trouble() {
        return Optional.empty();
    }
}
