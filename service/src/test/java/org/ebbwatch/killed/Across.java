package org.ebbwatch.killed;

import static org.assertj.core.api.Assertions.assertThat;

import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.Procedure;

/**
 * A passage on both sides of a gap.
 *
 * @param phase before the gap
 * @param remainingBeforeMillis what the running watch had still to go
 * @param phaseAfter with the first scan after it
 * @param remainingAfterMillis what it has still to go with that scan
 * @param whole what a watch that just began has still to go
 */
record Across(
        Entry.Gap gap,
        Phase phase,
        long remainingBeforeMillis,
        Phase phaseAfter,
        long remainingAfterMillis,
        long whole) {

    /** Same phase; rest and tie-off pause over a short gap and start again after a longer one. */
    void check() {
        assertThat(phaseAfter).isEqualTo(phase);
        if (phase != Phase.REST && phase != Phase.TIE_OFF) {
            return;
        }
        boolean pauses = gap.mostMillis() <= Procedure.careful().plausible().pauseMillis();
        assertThat(remainingAfterMillis).as(toString()).isEqualTo(pauses ? remainingBeforeMillis : whole);
    }
}
