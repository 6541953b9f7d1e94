package org.ebbwatch.evidence;

import org.ebbwatch.evidence.json.NumberText;
import org.ebbwatch.judge.procedure.Procedure;

/** The rule a verdict follows from, in words (ISO/IEC 17025:2017, 7.8.6: the rule, its risk, and what it was applied to). */
final class RuleText {
    private static final double MILLIS_PER_HOUR = 3_600_000;
    private static final double MILLIS_PER_MINUTE = 60_000;

    private RuleText() {}

    /** The rule as the procedure's own numbers make it. */
    static String of(Procedure procedure) {
        return "Guarded acceptance: a voltage V with its expanded uncertainty U (k = 2) passes a limit only if V + U < limit."
                + " Of cells that truly stand at the limit at most about one in forty would pass (normal errors; JCGM 106)."
                + " A cell is released only if V + U < "
                + volts(procedure.drain().limitVolts())
                + " under load held for at least " + hours(procedure.drain().holdMillis())
                + ", then V + U < " + volts(procedure.rest().limitVolts()) + " with the load off for at least "
                + hours(procedure.rest().leastMillis())
                + ", then no warming with the leads bonded for at least "
                + hours(procedure.tieOff().watchMillis())
                + ", then V + U < " + volts(procedure.rest().limitVolts()) + " again, parted for at least "
                + hours(procedure.tieOff().openMillis())
                + ". With the load off, a cell must also prove twice that it is there: by its recovery, and by the lead check"
                + " or a meter.";
    }

    private static String volts(double volts) {
        return NumberText.of(volts) + " V";
    }

    private static String hours(long millis) {
        return millis < MILLIS_PER_HOUR
                ? NumberText.of(millis / MILLIS_PER_MINUTE) + " min"
                : NumberText.of(millis / MILLIS_PER_HOUR) + " h";
    }
}
