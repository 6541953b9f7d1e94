package org.ebbwatch.passage;

import static java.util.Objects.requireNonNull;

import org.ebbwatch.judge.Phase;

/**
 * A passage that is over, as the records tell it.
 *
 * @param card as it was opened
 * @param closedMillis event time of its end
 * @param phase how it ended
 * @param reason why
 */
public record ClosedPassage(PassageCard card, long closedMillis, Phase phase, String reason) {
    public ClosedPassage {
        requireNonNull(card);
        requireNonNull(reason);
        if (!phase.isOver()) {
            throw new IllegalArgumentException("no passage ends in " + phase);
        }
    }
}
