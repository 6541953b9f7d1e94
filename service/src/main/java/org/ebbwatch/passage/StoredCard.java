package org.ebbwatch.passage;

import java.util.Optional;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.store.PassageRow;
import org.ebbwatch.store.WallLabel;

/** A passage's card as its row in the database, and back. */
final class StoredCard {
    private static final String WALL_QUALITY = "host";

    private StoredCard() {}

    static PassageCard of(PassageRow row) {
        return new PassageCard(
                row.id(),
                row.board(),
                row.channel(),
                RecordJson.read(CellCard.class, row.cell()),
                RecordJson.read(Procedure.class, row.procedure()),
                row.openedEventMillis(),
                row.openedWall().millis(),
                row.simulated() ? row.speed() : 0);
    }

    /** The row of a passage that is being opened. */
    static PassageRow row(PassageCard card) {
        return new PassageRow(
                card.id(),
                card.cell().tag(),
                card.board(),
                card.channel(),
                card.openedMillis(),
                new WallLabel(card.wallMillis(), WALL_QUALITY),
                RecordJson.write(card.procedure()),
                RecordJson.write(card.cell()),
                card.simulatedSpeed() > 0,
                Math.max(1, card.simulatedSpeed()),
                Optional.empty());
    }
}
