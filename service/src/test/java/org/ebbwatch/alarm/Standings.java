package org.ebbwatch.alarm;

import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.ebbwatch.judge.Finding;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.PassageStanding;

/** Passages 0, 1, 2 ... of a board called bench, as they might stand. */
final class Standings {
    static final long EVENT_MILLIS = 90_000;

    private Standings() {}

    static UUID id(int n) {
        return UUID.fromString("01931f00-0000-7000-8000-0000000000%02d".formatted(n));
    }

    static PassageCard card(int n) {
        return new PassageCard(
                id(n),
                "bench",
                n,
                new CellCard("cell " + n, Chemistry.LAYERED_OXIDE, 2, 10, true, false),
                Procedure.careful(),
                1,
                1_795_608_000_000L,
                60);
    }

    static Finding finding(FindingKind kind) {
        return new Finding(kind, 80_000, Phase.DRAIN, 61.5, Double.NaN, "degC", kind + ": a line \"with\" µ.");
    }

    static PassageStanding standing(int n, Phase phase, String reason, FindingKind... kinds) {
        List<Finding> findings = Arrays.stream(kinds).map(Standings::finding).toList();
        return new PassageStanding(card(n), phase, reason, findings, EVENT_MILLIS, 42);
    }

    static PassageStanding draining(int n, FindingKind... kinds) {
        return standing(n, Phase.DRAIN, "load put on", kinds);
    }
}
