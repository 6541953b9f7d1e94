package org.ebbwatch.web.answer;

import org.ebbwatch.judge.Finding;
import org.ebbwatch.judge.FindingKind.Urgency;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.RackView.PassageView;

/** How much a passage needs a person, least first. */
public enum Attention {
    /** All is well. */
    NONE,
    /** For the morning report. */
    ADVISORY,
    /** There is work for a person; it can wait for the day. */
    WORK,
    /** Held: nothing goes on until a person decides. */
    DECISION,
    /** Something is wrong now. */
    RINGING,
    /** Somebody may get hurt. */
    DANGER;

    static Attention of(PassageView passage) {
        if (passage.phase().isOver()) {
            return NONE;
        }
        Attention most = passage.phase() == Phase.HELD ? DECISION : NONE;
        if (most == NONE && passage.standing().stream().anyMatch(WaitsFor::isForAPerson)) {
            most = WORK;
        }
        for (Finding finding : passage.findings()) {
            Attention asked = of(finding.kind().urgency());
            most = asked.compareTo(most) > 0 ? asked : most;
        }
        return most;
    }

    private static Attention of(Urgency urgency) {
        return switch (urgency) {
            case ADVISORY -> ADVISORY;
            case RINGING -> RINGING;
            case DANGER -> DANGER;
        };
    }
}
