package org.ebbwatch.speed;

import java.time.Duration;
import java.util.stream.IntStream;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Entry.Acted;
import org.ebbwatch.judge.Entry.LeadChecked;
import org.ebbwatch.judge.Entry.LeadProof;
import org.ebbwatch.judge.Judge;
import org.ebbwatch.judge.Outcome;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;

/** Where a cell is while its scans are counted, the way there, and what it reads there in twelve hours. */
public enum Stage {
    /** On its load, falling from 3.9 V to 2.9 V. */
    DRAINING(Phase.DRAIN, true, 3.9, 2.9),
    /** Off its load after a whole hold, rising from 0.10 V to 0.25 V: it stays below the limit of the rest. */
    RESTING(Phase.REST, false, 0.10, 0.25),
    /** Bonded after a whole rest. */
    TIED_OFF(Phase.TIE_OFF, false, 0.000_2, 0.000_2);

    /** Twelve hours at one scan a second. */
    static final int STEPS = 43_200;

    private static final int FALL_STEPS = 10_800;
    private static final int SHORT_HOLD_STEPS = 62;
    private static final int SHORT_REST_STEPS = 7_300;

    private final Phase phase;
    private final boolean loaded;
    private final double fromVolts;
    private final double toVolts;

    Stage(Phase phase, boolean loaded, double fromVolts, double toVolts) {
        this.phase = phase;
        this.loaded = loaded;
        this.fromVolts = fromVolts;
        this.toVolts = toVolts;
    }

    /** A judge whose cell has just come to this stage. The hold is a minute and the rest before the bond two hours, to get there soon. */
    Judge reached() {
        Judge judge = new Judge(new CellCard("A1", Chemistry.LAYERED_OXIDE, 3.0, 25.0, true, false), procedure());
        fold(judge, false, 3.95, 3.95, 60);
        act(judge, Act.PUT_ON);
        fold(judge, true, 3.9, 3.9, 60);
        if (this != DRAINING) {
            fold(judge, true, 3.9, 0.12, FALL_STEPS);
            fold(judge, true, 0.05, 0.05, SHORT_HOLD_STEPS);
            fold(judge, false, 0.05, 0.10, 60);
        }
        if (this == TIED_OFF) {
            fold(judge, false, 0.10, 0.25, SHORT_REST_STEPS);
            act(judge, Act.TIE_OFF);
        }
        return judge;
    }

    private Procedure procedure() {
        Procedure careful = Procedure.careful();
        Procedure.Drain drain = careful.drain();
        Procedure.Rest rest = careful.rest();
        long restMillis =
                this == RESTING ? rest.leastMillis() : Duration.ofHours(2).toMillis();
        return new Procedure(
                "quickly there",
                1,
                new Procedure.Drain(
                        drain.provenVolts(),
                        drain.limitVolts(),
                        Duration.ofMinutes(1).toMillis(),
                        drain.longestMillis()),
                new Procedure.Rest(rest.limitVolts(), restMillis, rest.recoveryMillis()),
                careful.tieOff(),
                careful.heat(),
                careful.plausible());
    }

    Phase phase() {
        return phase;
    }

    /** What a cell reads that has just come here. */
    Course course(Judge judge) {
        return new Course(judge.lastMillis(), loaded, fromVolts, toVolts, STEPS);
    }

    private static void fold(Judge judge, boolean loaded, double fromVolts, double toVolts, int steps) {
        Course course = new Course(Math.max(0, judge.lastMillis()), loaded, fromVolts, toVolts, steps);
        IntStream.range(0, steps).forEach(step -> answer(judge, judge.fold(course.next())));
    }

    private static void answer(Judge judge, Outcome outcome) {
        if (outcome.events().contains(new Outcome.Wished(Outcome.Wish.CHECK_LEAD))) {
            judge.fold(new LeadChecked(judge.lastMillis(), LeadProof.ATTACHED));
        }
    }

    private static void act(Judge judge, Act act) {
        if (!judge.allowed().contains(act)) {
            throw new IllegalStateException(act + " is not allowed in " + judge.phase() + ": " + judge.reason());
        }
        judge.fold(new Acted(judge.lastMillis(), act));
    }
}
