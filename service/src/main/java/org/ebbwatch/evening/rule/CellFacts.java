package org.ebbwatch.evening.rule;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;
import org.ebbwatch.judge.Entry.LeadProof;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Phase;

/**
 * What is known of one cell when the check looks at it.
 *
 * @param switching who switches its load
 * @param loadOn whether its load is on
 * @param drew whether that load was seen to draw since it went on
 * @param mayClose whether the judge wants the load on and nothing keeps it from closing
 * @param holding whether it is held below the drain limit, so that an opening could start the hold again
 * @param bonded whether its leads are bonded
 * @param recovered whether its voltage was seen to come back since its load or its bond came off
 * @param findings that stand
 * @param lead what the lead check of this evening said; empty before its answer
 * @param celsius NaN where nothing believable is read
 * @param ambientCelsius NaN where nothing believable is read
 * @param answer what its load answered to an opening; empty while it was not asked or has not answered yet
 * @param touchedKelvin by how much its sensor rose within a minute of being held; empty where it did not rise enough
 */
public record CellFacts(
        UUID passage,
        String tag,
        Phase phase,
        Switching switching,
        boolean loadOn,
        boolean drew,
        boolean mayClose,
        boolean holding,
        boolean bonded,
        boolean recovered,
        Set<FindingKind> findings,
        Optional<LeadProof> lead,
        double celsius,
        double ambientCelsius,
        Optional<LoadAnswer> answer,
        OptionalDouble touchedKelvin) {

    /** Who switches a load. */
    public enum Switching {
        /** The board, for this cell alone. */
        BOARD,
        /** One load for a string of cells. */
        STRING,
        HANDS
    }

    public CellFacts {
        requireNonNull(passage);
        requireNonNull(tag);
        requireNonNull(phase);
        requireNonNull(switching);
        requireNonNull(lead);
        requireNonNull(answer);
        requireNonNull(touchedKelvin);
        findings = Set.copyOf(findings);
    }

    /** Whether its load can be opened for a moment: nothing is lost by it, and the judge closes it again. */
    public boolean mayToggle() {
        return phase == Phase.DRAIN && switching == Switching.BOARD && loadOn && mayClose && !holding && !bonded;
    }

    /** Whether the board's lead check says anything of it. */
    public boolean mayCheckLead() {
        return !loadOn && !bonded && !phase.isOver();
    }

    boolean stands(FindingKind kind) {
        return findings.contains(kind);
    }
}
