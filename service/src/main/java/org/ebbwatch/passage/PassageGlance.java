package org.ebbwatch.passage;

import java.util.Optional;
import java.util.Set;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Entry.LeadProof;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Phase;

/**
 * What the judge knows of one open passage besides what people are shown, with the latest reading of its channel.
 *
 * @param card what is fixed of it, with the channel it is on now
 * @param switched whether the board switches its load
 * @param inString whether it is drained with others
 * @param mayClose whether the judge wants its load on and nothing keeps that from closing
 * @param drew whether the load was seen to draw since it went on
 * @param recovered whether the voltage was seen to come back since the load or the bond came off
 * @param internalOhms as the judge measured it; NaN where it did not
 * @param lead what the last lead check said
 * @param canCheckLead whether the board can check it
 * @param reading the latest; empty before the first
 */
public record PassageGlance(
        PassageCard card,
        Phase phase,
        boolean switched,
        boolean inString,
        boolean loadOn,
        boolean mayClose,
        boolean bonded,
        boolean drew,
        boolean recovered,
        double internalOhms,
        Set<FindingKind> findings,
        Optional<LeadAnswer> lead,
        boolean canCheckLead,
        Optional<Entry.Scan> reading) {

    /** What a lead check said, and as which entry of the journal. */
    public record LeadAnswer(LeadProof proof, long sequence) {}
}
