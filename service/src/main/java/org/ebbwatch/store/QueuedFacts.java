package org.ebbwatch.store;

import java.io.IOException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Commits changes in numbered batches, and while the database is away lets them wait in a {@link FactQueue}, from which they go
 * into the database in their order when it is back.
 *
 * <p>Each transaction first moves the number in {@code committed_batch} on, and does nothing else if that has been done before. So a
 * batch whose commit was cut off, of which nobody knows whether it is in the database, can be given again; and a transaction of
 * a lost connection that the database still works on holds up the next one until it is over.
 */
final class QueuedFacts implements FactKeeper {
    private static final int MOST_CHANGES = 100;

    private final Database database;
    private final FactQueue queue;
    private FactBatch adrift;
    private long lastNumber;
    private String trouble = "";

    /**
     * Takes up what waits in the queue.
     *
     * @param committedNumber of the last batch the database has
     */
    QueuedFacts(Database database, FactQueue queue, long committedNumber) {
        this.database = database;
        this.queue = queue;
        this.lastNumber = Math.max(committedNumber, queue.lastNumber().orElse(0));
    }

    @Override
    public List<String> keep(List<Change> waiting) throws IOException {
        List<String> refused = new ArrayList<>();
        drain(refused);
        if (adrift != null) {
            place(refused);
        }
        if (!waiting.isEmpty()) {
            adrift = new FactBatch(++lastNumber, waiting);
            waiting.clear();
            place(refused);
        }
        return refused;
    }

    /** A batch goes where it is safe; one that is safe nowhere keeps its number, for it may have been committed. */
    private void place(List<String> refused) throws IOException {
        if (queue.size() > 0 || !commit(adrift, refused)) {
            queue.add(adrift);
        }
        adrift = null;
    }

    /** Not all at once: whoever calls has a rack to watch. */
    private void drain(List<String> refused) throws IOException {
        int changes = 0;
        while (queue.size() > 0 && changes < MOST_CHANGES) {
            FactBatch next = queue.first().orElseThrow();
            if (!commit(next, refused)) {
                return;
            }
            queue.removeFirst();
            changes += next.changes().size();
        }
    }

    private boolean commit(FactBatch batch, List<String> refused) {
        try (Connection connection = database.dataSource().getConnection()) {
            connection.setAutoCommit(false);
            List<String> itsRefused;
            try {
                itsRefused = isNew(connection, batch) ? Change.applyAll(connection, batch.changes()) : List.of();
                connection.commit();
            } catch (SQLException e) {
                rollBack(connection, e);
                throw e;
            }
            refused.addAll(itsRefused);
            trouble = "";
            return true;
        } catch (SQLException e) {
            trouble = e.getMessage();
            return false;
        }
    }

    private static boolean isNew(Connection connection, FactBatch batch) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement("update committed_batch set number = ? where number < ?")) {
            statement.setLong(1, batch.number());
            statement.setLong(2, batch.number());
            return statement.executeUpdate() == 1;
        }
    }

    private static void rollBack(Connection connection, SQLException failure) {
        try {
            connection.rollback();
        } catch (SQLException e) {
            failure.addSuppressed(e);
        }
    }

    /** Gives the database all that waits in the queue. */
    void drainAll() {
        try {
            while (queue.size() > 0) {
                int before = queue.size();
                drain(new ArrayList<>());
                if (queue.size() == before) {
                    throw new StorageException("facts that wait on disk cannot be committed: " + trouble);
                }
            }
        } catch (IOException e) {
            throw new StorageException("facts that wait on disk cannot be committed", e);
        }
    }

    @Override
    public boolean isBehind() {
        return adrift != null || queue.size() > 0;
    }

    @Override
    public Optional<String> trouble() {
        Optional<String> away = database.away();
        if (away.isEmpty() && !isBehind()) {
            return Optional.empty();
        }
        String why = away.orElse(trouble.isEmpty() ? "it is catching up" : trouble);
        return Optional.of("the database is away (" + why + "); " + queue.size()
                + " batches of facts wait on the local disk, and readings with them");
    }
}
