package org.ebbwatch.passage;

import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Tells passages again from their records; safe for use by several threads, also while a rack is at work. */
public interface PassageTeller {

    /** The card of a passage that was written down, open or over. */
    Optional<PassageCard> card(UUID passage);

    /** Tells a passage again, reading by reading and entry by entry, in the order it was folded first. */
    void read(PassageCard card, JournalTaker taker);

    /** What was written down of a passage while it was watched: phase changes and findings, in the order they came. */
    List<String> recorded(PassageCard card);

    /** The sealed segments a passage's readings lie in. */
    PassageChain chain(PassageCard card);

    /** What people noted of its cell, part by part; empty: nothing, or nobody here knows. */
    default Optional<? extends Record> noted(PassageCard card) {
        return Optional.empty();
    }
}
