package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import org.ebbwatch.judge.Finding;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.FindingKind.Urgency;
import org.ebbwatch.judge.Phase;

/**
 * A finding that stands, and the numbers it rests on.
 *
 * @param kind what was seen
 * @param urgency how loudly it asks for a person
 * @param latched whether it stands until a person decides
 * @param phase the phase it was raised in
 * @param eventMillis event time of its raising
 * @param seen what was measured, in {@code unit}; null where the finding rests on no number
 * @param limit what it was held against, in {@code unit}; null where there is none
 * @param unit V, A, degC, K, K/s, Ah, s or empty
 * @param line the finding in one line
 */
@Serdeable
public record FindingAnswer(
        FindingKind kind,
        Urgency urgency,
        boolean latched,
        Phase phase,
        long eventMillis,
        @Nullable Double seen,
        @Nullable Double limit,
        String unit,
        String line) {

    static final Comparator<FindingAnswer> URGENT_FIRST = Comparator.comparing(FindingAnswer::urgency)
            .reversed()
            .thenComparing(FindingAnswer::eventMillis)
            .thenComparing(FindingAnswer::kind);

    static FindingAnswer of(Finding finding) {
        return new FindingAnswer(
                finding.kind(),
                finding.kind().urgency(),
                finding.kind().isLatched(),
                finding.phase(),
                finding.eventMillis(),
                Figures.fine(finding.seen()),
                Figures.fine(finding.limit()),
                finding.unit(),
                finding.line());
    }

    static List<FindingAnswer> of(Collection<Finding> findings) {
        return findings.stream().map(FindingAnswer::of).sorted(URGENT_FIRST).toList();
    }
}
