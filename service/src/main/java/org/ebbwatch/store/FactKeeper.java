package org.ebbwatch.store;

import java.io.IOException;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;

/** Makes changes last, all that come together or none. Not thread-safe. */
interface FactKeeper {

    /**
     * Returns when all these changes would outlive a power cut. Takes them out of the list as soon as they need not be given again.
     *
     * @param waiting in the order they were made; may be empty
     * @return what the database refuses for ever, with its reason; all else is kept
     * @throws SQLException if the database cannot promise it and nothing else can
     * @throws IOException if the disk cannot promise it and nothing else can
     */
    List<String> keep(List<Change> waiting) throws SQLException, IOException;

    /** Whether something of earlier calls is still to be done, so that another is worth it without any change. */
    boolean isBehind();

    /** Why the database does not have all that is kept; empty when it has. */
    Optional<String> trouble();
}
