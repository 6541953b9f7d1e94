package org.ebbwatch.acquire;

/** How a request to a board ended; every request that was sent ends in exactly one of these. */
public sealed interface Answer {

    /** The board carried it out, or answered the lead check asked for. */
    record Done() implements Answer {}

    /** The board did not carry it out and says why. */
    record Refused(org.ebbwatch.rig.message.Refused refusal) implements Answer {}

    /**
     * No answer came: after the deadline, or because the link was lost or the board restarted. Whether the board carried it out is
     * not known; the load bit of the next scan tells.
     *
     * @param waitedMillis how long the answer was waited for
     */
    record TimedOut(long waitedMillis) implements Answer {}
}
