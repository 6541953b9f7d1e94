package org.ebbwatch.passage;

import java.util.Optional;
import org.ebbwatch.passage.DeskRequest.CheckIn;

/** What was written down of a cell before, as far as it keeps the cell off the rack. */
@FunctionalInterface
public interface Admission {
    /** Nothing was written down of any cell. */
    Admission OF_ALL = request -> Optional.empty();

    /** Why the cell may not be checked in like that, and what to do, in sentences; empty: it may. */
    Optional<String> objection(CheckIn request);
}
