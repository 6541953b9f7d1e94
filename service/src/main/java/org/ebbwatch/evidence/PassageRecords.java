package org.ebbwatch.evidence;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.ebbwatch.passage.JournalTaker;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.PassageChain;
import org.ebbwatch.passage.PassageTeller;

/**
 * What a bundle is made from.
 *
 * @param card what was fixed when the passage was opened
 * @param journal tells every reading and entry in order
 * @param writtenDown phase changes and findings as they were written down while the passage was watched, each an
 *     {@link org.ebbwatch.passage.EventLine}
 * @param chain the sealed segments the readings lie in
 * @param intake what was noted of the cell when it was checked in (condition, mass and the like), written into the record component by
 *     component; empty: nothing
 */
public record PassageRecords(
        PassageCard card,
        Consumer<JournalTaker> journal,
        List<String> writtenDown,
        PassageChain chain,
        Optional<? extends Record> intake) {

    /** What a rack's storage has of a passage. */
    public static PassageRecords of(PassageTeller storage, PassageCard card) {
        return new PassageRecords(
                card,
                taker -> storage.read(card, taker),
                storage.recorded(card),
                storage.chain(card),
                storage.noted(card));
    }
}
