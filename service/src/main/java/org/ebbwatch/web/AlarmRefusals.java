package org.ebbwatch.web;

import java.util.UUID;
import org.ebbwatch.alarm.AlarmReply;
import org.ebbwatch.alarm.AlarmReply.Done;
import org.ebbwatch.alarm.AlarmReply.KeyUsed;
import org.ebbwatch.alarm.AlarmReply.Refused;
import org.ebbwatch.alarm.AlarmReply.Stale;
import org.ebbwatch.alarm.AlarmReply.Unknown;
import org.ebbwatch.alarm.AlarmView;
import org.ebbwatch.web.problem.Problem.OfAlarm;
import org.ebbwatch.web.problem.ProblemException;
import org.ebbwatch.web.problem.ProblemKind;

/** What was refused about an alarm, as problem details. */
final class AlarmRefusals {
    private AlarmRefusals() {}

    /** What was done. */
    static Done done(AlarmReply reply) {
        if (reply instanceof Done done) {
            return done;
        }
        throw problem(reply);
    }

    static ProblemException unknown(UUID alarm) {
        return new ProblemException(
                ProblemKind.UNKNOWN_ALARM, "There is no alarm " + alarm + " in the book, or it is over.");
    }

    private static ProblemException problem(AlarmReply reply) {
        if (reply instanceof Unknown unknown) {
            return unknown(unknown.alarm());
        }
        if (reply instanceof Stale stale) {
            return ProblemException.stale(
                    "You saw sequence " + stale.seen() + " of the alarm, it is now "
                            + stale.now().sequence() + '.',
                    alarm(stale.now()),
                    stale.asked().name(),
                    stale.now().sequence());
        }
        if (reply instanceof Refused refused) {
            return switch (refused.why()) {
                case NO_SUCH_ALARM -> unknown(refused.now().id());
                case NOT_NOW, STAYS_IN_VIEW ->
                    ProblemException.notNow(
                            refused.words(),
                            alarm(refused.now()),
                            refused.asked().name());
                case NO_NAME, NO_REASON, BAD_TIME -> new ProblemException(ProblemKind.BAD_BODY, refused.words());
            };
        }
        if (reply instanceof KeyUsed used) {
            return new ProblemException(
                    ProblemKind.KEY_USED, "The key \"" + used.key() + "\" was used for another request.");
        }
        throw new IllegalStateException("no problem is made of " + reply);
    }

    private static OfAlarm alarm(AlarmView now) {
        return new OfAlarm(
                now.id(),
                now.kind(),
                now.state(),
                now.cover(),
                now.allowed().stream().sorted().toList());
    }
}
