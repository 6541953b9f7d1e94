package org.ebbwatch.intake;

import java.util.List;
import java.util.Optional;

/** Where cards are read. Safe for use by several threads. */
public interface IntakeRecords {

    /** The card of the cell with this tag; a passage's is that of its cell's tag. */
    Optional<IntakeRecord> tagged(String tag);

    /** Cards, the one taken in last first. */
    List<IntakeRecord> latest();

    /**
     * The photo of a card.
     *
     * @throws org.ebbwatch.store.StorageException if the records are away
     */
    Optional<CellPhoto> photo(IntakeRecord record);
}
