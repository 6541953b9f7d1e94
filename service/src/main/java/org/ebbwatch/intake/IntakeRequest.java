package org.ebbwatch.intake;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import org.ebbwatch.intake.rule.IntakeFields;

/** What a person may ask of the cards. */
public sealed interface IntakeRequest {
    /** A name has at most so many characters. */
    int LONGEST_NAME = 100;

    /** A reason, a note and an origin have at most so many. */
    int LONGEST_TEXT = 1_000;

    /** Who asks. */
    String by();

    /**
     * A cell has come.
     *
     * @param name what it is called
     * @param likeTag take over what a box has in common from that card
     * @param likeLast take it over from the card that was taken in last
     */
    record TakeIn(Name name, Optional<String> likeTag, boolean likeLast, IntakeFields fields, String by)
            implements IntakeRequest {
        public TakeIn {
            requireNonNull(name);
            requireNonNull(fields);
            requireNonNull(by);
        }
    }

    /** What a cell is called. */
    sealed interface Name {
        /** As a person wrote it. */
        record Given(String tag) implements Name {}

        /** The next free number after some letters. */
        record Numbered(String prefix) implements Name {}
    }

    /**
     * Something is to be written on a card.
     *
     * @param seen the number of the revision the person saw
     * @param fields what is new; the rest stays
     * @param reason why; empty will do where only blanks are filled
     */
    record Amend(String tag, int seen, IntakeFields fields, String reason, String by) implements IntakeRequest {
        public Amend {
            requireNonNull(tag);
            requireNonNull(fields);
            requireNonNull(reason);
            requireNonNull(by);
        }
    }

    /**
     * A photo of the cell.
     *
     * @param content as the camera made it
     */
    record Photograph(String tag, int seen, byte[] content, String by) implements IntakeRequest {
        public Photograph {
            requireNonNull(tag);
            requireNonNull(content);
            requireNonNull(by);
        }
    }
}
