package org.ebbwatch.intake;

import java.util.List;
import java.util.Optional;
import org.ebbwatch.intake.rule.IntakeFields;
import org.ebbwatch.intake.rule.Triage;

/**
 * A cell's card with all that was ever written on it.
 *
 * @param tag of the cell; a passage of a cell with this tag is this cell's
 * @param revisions in the order they were written, at least one
 */
public record IntakeRecord(String tag, List<Revision> revisions) {

    /**
     * What the card said from then on.
     *
     * @param number from 1
     * @param by who wrote it
     * @param reason why something was overwritten; empty where nothing was
     * @param wallMillis by the wall clock of the host, milliseconds since 1970
     */
    public record Revision(int number, IntakeFields card, String by, String reason, long wallMillis) {}

    public IntakeRecord {
        revisions = List.copyOf(revisions);
        if (revisions.isEmpty()) {
            throw new IllegalArgumentException("a card has been written at least once");
        }
    }

    /** The last revision. */
    public Revision last() {
        return revisions.get(revisions.size() - 1);
    }

    /** What the card says now. */
    public IntakeFields card() {
        return last().card();
    }

    /** Whether the cell may go onto the rack as the card stands. */
    public Triage triage() {
        return Triage.of(card());
    }

    /** SHA-256 of the photo as it is kept. */
    public Optional<String> photo() {
        return card().photo();
    }
}
