package org.ebbwatch.alarm;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.Cause;
import org.ebbwatch.alarm.book.Report;
import org.ebbwatch.alarm.book.Report.Condition;
import org.ebbwatch.judge.Finding;
import org.ebbwatch.judge.FindingKind.Urgency;
import org.ebbwatch.judge.MildWarming;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.PassageStanding;

/** What the alarm book is told of a passage: its findings, and HELD where no ringing finding that stands says why. */
final class StandingReport {
    private StandingReport() {}

    /**
     * The report.
     *
     * @param fast whether the cell has turned out to be hot or to warm fast since its warming began
     */
    static Report of(PassageStanding passage, boolean fast) {
        List<Condition> conditions = new ArrayList<>();
        for (Finding finding : passage.findings()) {
            conditions.add(new Condition(
                    AlarmKind.of(finding.kind()),
                    cause(passage, finding.line(), finding.eventMillis()),
                    !fast && MildWarming.is(finding)));
        }
        if (passage.phase() == Phase.HELD && !isExplained(passage)) {
            conditions.add(new Condition(AlarmKind.HELD, cause(passage, passage.reason(), passage.eventMillis())));
        }
        return new Report(
                passage.card().id().toString(),
                passage.card().board(),
                passage.eventMillis(),
                passage.phase().isOver(),
                conditions);
    }

    /** A finding that holds a passage gives its own line as the reason. */
    private static boolean isExplained(PassageStanding passage) {
        return passage.findings().stream()
                .anyMatch(finding -> finding.kind().urgency() != Urgency.ADVISORY
                        && finding.line().equals(passage.reason()));
    }

    private static Cause cause(PassageStanding passage, String line, long eventMillis) {
        return new Cause(
                line,
                Optional.of(passage.card().id()),
                passage.card().cell().tag(),
                passage.card().board(),
                passage.card().channel(),
                eventMillis,
                passage.sequence(),
                passage.card().simulatedSpeed());
    }
}
