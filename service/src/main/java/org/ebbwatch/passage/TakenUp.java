package org.ebbwatch.passage;

import java.util.Optional;
import org.ebbwatch.judge.Phase;

/**
 * A passage that an earlier run of the service left open, ready to go on.
 *
 * @param card as it was opened
 * @param refolded as this version of the judge sees it now
 * @param otherPhase the phase it was left in, where this version judges otherwise; a person must decide then
 */
public record TakenUp(PassageCard card, Refolded refolded, Optional<Phase> otherPhase) {}
