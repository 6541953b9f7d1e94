package org.ebbwatch.web;

import org.ebbwatch.passage.DeskAnswer;
import org.ebbwatch.passage.DeskAnswer.Done;
import org.ebbwatch.passage.DeskAnswer.KeyUsed;
import org.ebbwatch.passage.DeskAnswer.NotAdmitted;
import org.ebbwatch.passage.DeskAnswer.NotNow;
import org.ebbwatch.passage.DeskAnswer.Stale;
import org.ebbwatch.passage.DeskAnswer.Taken;
import org.ebbwatch.passage.DeskAnswer.Unable;
import org.ebbwatch.passage.DeskAnswer.UnfitChannel;
import org.ebbwatch.passage.DeskAnswer.UnknownBoard;
import org.ebbwatch.passage.DeskAnswer.UnknownPassage;
import org.ebbwatch.web.problem.ProblemException;
import org.ebbwatch.web.problem.ProblemKind;

/** What the desk refused, as problem details. */
final class Refusals {
    private Refusals() {}

    /** What was done. */
    static Done done(DeskAnswer answer) {
        if (answer instanceof Done done) {
            return done;
        }
        throw problem(answer);
    }

    private static ProblemException problem(DeskAnswer answer) {
        if (answer instanceof NotNow refused) {
            return ProblemException.notNow(
                    refused.request() + " is not allowed in " + refused.phase() + ". " + refused.why(),
                    refused.phase(),
                    refused.request(),
                    refused.allowed().stream().sorted().toList());
        }
        if (answer instanceof Stale stale) {
            return ProblemException.stale(
                    "You saw sequence " + stale.seen() + ", it is now " + stale.current() + '.', stale.current());
        }
        if (answer instanceof UnknownPassage unknown) {
            return new ProblemException(ProblemKind.UNKNOWN_PASSAGE, "There is no passage " + unknown.passage() + '.');
        }
        if (answer instanceof UnknownBoard unknown) {
            return new ProblemException(
                    ProblemKind.BAD_BODY,
                    "board cannot be \"" + unknown.board() + "\"; there are " + String.join(", ", unknown.boards())
                            + '.');
        }
        if (answer instanceof UnfitChannel unfit) {
            return new ProblemException(
                    ProblemKind.BAD_BODY,
                    "channel cannot be " + unfit.channel() + ". " + unfit.why() + " Channels of board " + unfit.board()
                            + " that fit: " + (unfit.fit().isEmpty() ? "none" : unfit.fit()) + '.');
        }
        if (answer instanceof NotAdmitted barred) {
            return new ProblemException(ProblemKind.NOT_ADMITTED, barred.why());
        }
        if (answer instanceof Taken taken) {
            return new ProblemException(
                    ProblemKind.TAKEN,
                    taken.what() + " belongs to the cell " + taken.tag() + " in passage " + taken.by() + '.');
        }
        if (answer instanceof Unable unable) {
            return new ProblemException(ProblemKind.UNABLE, unable.why());
        }
        if (answer instanceof KeyUsed used) {
            return new ProblemException(
                    ProblemKind.KEY_USED, "The key \"" + used.key() + "\" was used for another request.");
        }
        throw new IllegalStateException("no problem is made of " + answer);
    }
}
