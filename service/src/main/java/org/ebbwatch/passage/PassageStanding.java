package org.ebbwatch.passage;

import java.util.List;
import org.ebbwatch.judge.Finding;
import org.ebbwatch.judge.Phase;

/**
 * What stands on a passage.
 *
 * @param card what is fixed of it, with the channel it is on now
 * @param phase where it is
 * @param reason why it is there
 * @param findings what stands
 * @param eventMillis event time of its last entry
 * @param sequence of that entry in its journal, readings counted
 */
public record PassageStanding(
        PassageCard card, Phase phase, String reason, List<Finding> findings, long eventMillis, long sequence) {}
