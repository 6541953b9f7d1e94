package org.ebbwatch.acquire;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.ebbwatch.rig.message.CheckLead;
import org.ebbwatch.rig.message.Done;
import org.ebbwatch.rig.message.HostMessage;
import org.ebbwatch.rig.message.Kind;
import org.ebbwatch.rig.message.LeadChecked;
import org.ebbwatch.rig.message.Refused;

/**
 * The requests to one board, from sending to their one {@link Answer}. Times are attended milliseconds. Sequences wrap at 2^16,
 * so an answer must fit the kind of the request too; one that fits no open request is counted and passed over.
 */
final class Requests {

    private static final long ANSWER_MILLIS = 2_000;
    private static final long LEAD_CHECK_MILLIS = 3_000;

    private record Open(int sequence, HostMessage request, long sentMillis) {
        boolean overdue(long millis) {
            return millis - sentMillis >= (request instanceof CheckLead ? LEAD_CHECK_MILLIS : ANSWER_MILLIS);
        }
    }

    private final String board;
    private final Outgoing outgoing;
    private final BoardListener listener;
    private final LinkMeter meter;
    private final List<Open> open = new ArrayList<>();
    private long unexpectedAnswers;

    Requests(String board, Outgoing outgoing, BoardListener listener, LinkMeter meter) {
        this.meter = meter;
        this.board = board;
        this.outgoing = outgoing;
        this.listener = listener;
    }

    int send(HostMessage request, long millis) {
        int sequence = outgoing.send(request);
        open.add(new Open(sequence, request, millis));
        return sequence;
    }

    /** The board carried a request out: tells it, and gives the request. */
    Optional<HostMessage> done(Done done, long millis) {
        Optional<Open> request = take(done.requestSequence(), done.requestKind());
        request.ifPresent(found -> meter.roundTrip(millis - found.sentMillis));
        request.ifPresent(found -> listener.answered(board, found.sequence, new Answer.Done()));
        return request.map(Open::request);
    }

    void refused(Refused refused) {
        take(refused.requestSequence(), refused.requestKind())
                .ifPresent(found -> listener.answered(board, found.sequence, new Answer.Refused(refused)));
    }

    void leadChecked(LeadChecked checked) {
        take(checked.requestSequence(), Kind.CHECK_LEAD.code()).ifPresent(found -> {
            listener.leadChecked(
                    board, checked.channel(), checked.outcome(), checked.voltsBefore(), checked.voltsDuring());
            listener.answered(board, found.sequence, new Answer.Done());
        });
    }

    /** Ends the requests that have waited too long. */
    void expire(long millis) {
        end(millis, request -> request.overdue(millis));
    }

    /** Ends every request, because no answer can come any more. */
    void abandon(long millis) {
        end(millis, request -> true);
    }

    long unexpectedAnswers() {
        return unexpectedAnswers;
    }

    private void end(long millis, Predicate<Open> which) {
        // A listener may send a request from within the call, so the list is left alone while it is told.
        List<Open> ended = new ArrayList<>();
        open.removeIf(request -> which.test(request) && ended.add(request));
        for (Open request : ended) {
            listener.answered(board, request.sequence, new Answer.TimedOut(millis - request.sentMillis));
        }
    }

    private Optional<Open> take(int sequence, int kindCode) {
        for (Iterator<Open> requests = open.iterator(); requests.hasNext(); ) {
            Open candidate = requests.next();
            if (candidate.sequence == sequence && candidate.request.kind().code() == kindCode) {
                requests.remove();
                return Optional.of(candidate);
            }
        }
        unexpectedAnswers++;
        return Optional.empty();
    }
}
