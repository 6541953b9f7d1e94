package org.ebbwatch.intake;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.passage.JournalTaker;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.PassageChain;
import org.ebbwatch.passage.PassageTeller;

/**
 * Tells passages with what was noted of their cells.
 *
 * @param passages without it
 * @param cards of the cells
 */
public record CardedPassages(PassageTeller passages, IntakeRecords cards) implements PassageTeller {

    @Override
    public Optional<PassageCard> card(UUID passage) {
        return passages.card(passage);
    }

    @Override
    public void read(PassageCard card, JournalTaker taker) {
        passages.read(card, taker);
    }

    @Override
    public List<String> recorded(PassageCard card) {
        return passages.recorded(card);
    }

    @Override
    public PassageChain chain(PassageCard card) {
        return passages.chain(card);
    }

    @Override
    public Optional<? extends Record> noted(PassageCard card) {
        return cards.tagged(card.cell().tag()).map(Noted::of);
    }
}
