package org.ebbwatch.web;

import org.ebbwatch.intake.IntakeRecord;
import org.ebbwatch.intake.IntakeReply;
import org.ebbwatch.intake.rule.Condition;
import org.ebbwatch.intake.rule.Voltage;
import org.ebbwatch.web.problem.ProblemException;
import org.ebbwatch.web.problem.ProblemKind;

/** What was not written on a card, as problem details. */
final class IntakeRefusals {
    private IntakeRefusals() {}

    /** What was written. */
    static IntakeRecord done(IntakeReply reply) {
        if (reply instanceof IntakeReply.Done done) {
            return done.record();
        }
        throw problem(reply);
    }

    static ProblemException unknown(String tag) {
        return new ProblemException(ProblemKind.UNKNOWN_CARD, "There is no card of \"" + tag + "\".");
    }

    private static ProblemException problem(IntakeReply reply) {
        if (reply instanceof IntakeReply.UnknownTag unknown) {
            return unknown(unknown.tag());
        }
        if (reply instanceof IntakeReply.TagTaken taken) {
            return new ProblemException(ProblemKind.TAG_TAKEN, "There is a card of \"" + taken.tag() + "\" already.");
        }
        if (reply instanceof IntakeReply.NothingToRepeat) {
            return new ProblemException(
                    ProblemKind.BAD_BODY, "likeLast cannot be true: there is no card yet to take anything over from.");
        }
        if (reply instanceof IntakeReply.Missing missing) {
            return new ProblemException(ProblemKind.BAD_BODY, "The field " + missing.field() + " is missing.");
        }
        if (reply instanceof IntakeReply.VoltsUnfit unfit) {
            return new ProblemException(
                    ProblemKind.BAD_BODY, "measuredVolts: " + unfit.why() + ' ' + toDo(unfit.voltage()));
        }
        if (reply instanceof IntakeReply.StaysOut out) {
            return new ProblemException(ProblemKind.STAYS_OUT, staysOut(out.tag(), out.condition()));
        }
        if (reply instanceof IntakeReply.NeedsReason) {
            return new ProblemException(
                    ProblemKind.BAD_BODY,
                    "The field reason is missing: something that was written is overwritten, and why has to be said in 1 to"
                            + " 1000 characters.");
        }
        if (reply instanceof IntakeReply.PhotoUnfit unfit) {
            return new ProblemException(ProblemKind.BAD_PHOTO, unfit.why());
        }
        if (reply instanceof IntakeReply.Stale stale) {
            return ProblemException.stale(
                    "You saw revision " + stale.seen() + " of the card, it is now " + stale.current() + '.',
                    stale.current());
        }
        if (reply instanceof IntakeReply.KeyUsed used) {
            return new ProblemException(
                    ProblemKind.KEY_USED, "The key \"" + used.key() + "\" was used for another request.");
        }
        if (reply instanceof IntakeReply.RecordsAway away) {
            return new ProblemException(ProblemKind.RECORDS_AWAY, "The card cannot be written: " + away.why() + '.');
        }
        throw new IllegalStateException("no problem is made of " + reply);
    }

    private static String toDo(Voltage voltage) {
        if (voltage.wantsAReason()) {
            return "Measure again; if it is right say why in voltsExplained.";
        }
        return voltage == Voltage.REVERSED
                ? "Measure again at the cell's own terminals, red lead to plus. A cell that is reversed does not go on a rack:"
                        + " leave measuredVolts out and say so in the note."
                : "Count the cells, measure again, and correct cellsInSeries or measuredVolts.";
    }

    private static String staysOut(String tag, Condition condition) {
        return "The card of " + tag + " says that it is " + condition.words() + "; that is not taken back.";
    }
}
