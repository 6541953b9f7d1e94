package org.ebbwatch.acquire;

import org.ebbwatch.rig.message.Who;

/** Asks a board who it is, again after 1, 2, 4 and then every 8 s while it does not answer. Times are attended milliseconds. */
final class IdentityQuestion {

    private static final long FIRST_AGAIN_MILLIS = 1_000;
    private static final long LAST_AGAIN_MILLIS = 8_000;
    private static final long OVERDUE_MILLIS = 5_000;

    private final Outgoing outgoing;
    private long begunMillis;
    private long askedMillis;
    private long againMillis;
    private int unanswered;

    IdentityQuestion(Outgoing outgoing) {
        this.outgoing = outgoing;
    }

    void begin(long millis) {
        begunMillis = millis;
        unanswered = 0;
        againMillis = FIRST_AGAIN_MILLIS;
        outgoing.delimit();
        ask(millis);
    }

    /** Asks once, out of turn. */
    void ask(long millis) {
        askedMillis = millis;
        unanswered++;
        outgoing.send(new Who());
    }

    void again(long millis) {
        if (millis - askedMillis >= againMillis) {
            againMillis = Math.min(LAST_AGAIN_MILLIS, 2 * againMillis);
            ask(millis);
        }
    }

    long askedMillis() {
        return askedMillis;
    }

    boolean overdue(long millis) {
        return millis - begunMillis >= OVERDUE_MILLIS;
    }

    /** Takes an identity that arrived; false where nobody asked for it. Only the answer to a single question tells how long it took. */
    boolean answered(long millis, LinkMeter meter) {
        boolean asked = unanswered > 0;
        if (unanswered == 1) {
            meter.roundTrip(millis - askedMillis);
        }
        unanswered = Math.max(0, unanswered - 1);
        return asked;
    }
}
