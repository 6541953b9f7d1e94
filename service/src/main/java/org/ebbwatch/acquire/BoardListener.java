package org.ebbwatch.acquire;

import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.LeadOutcome;
import org.ebbwatch.time.Gap;

/**
 * Hears everything about the boards of a rack, one call at a time: all calls for all boards are made under the rack's one
 * lock, in the order things happened. {@code board} is the name the rack file gives the board, the same in every call.
 *
 * <p>Before a scan come, where they apply and in this order: {@link #silent}, {@link #rebooted}, {@link #gap}, then
 * {@link #clockOdd}, then {@link #scan}. A listener may send requests from within a call; it must not wait for anything.
 */
public interface BoardListener {

    /** The board has proven who it is: for the first time, after each new connection, and after each restart of the board. */
    void identified(String board, Identity identity);

    /** A complete scan; {@code scan} is used again after the call. */
    void scan(String board, BoardScan scan);

    /**
     * No complete scan has come for the longer of 5 s and three intervals, or none came for so long by the board's own clock
     * before the scan that follows. Told once per silence, whatever its cause; the next scan ends it.
     *
     * @param eventMillis event time of the last scan: from then on nothing is known
     */
    void silent(String board, long eventMillis);

    /** Something is missing before the next scan, whose event time has moved on by the least length of the gap. */
    void gap(String board, Gap gap);

    /** The next scan is the first known of another run of the board. Its loads are open unless the scan says otherwise. */
    void rebooted(String board, long bootNumber);

    /**
     * The board's clock has become odd, or ordinary again; told at real speed only.
     *
     * @param ratio board time over host time
     */
    void clockOdd(String board, double ratio, boolean odd);

    /** The outcome of a lead check that was asked for; {@link #answered} follows. */
    void leadChecked(String board, int channel, LeadOutcome outcome, int voltsBeforeCounts, int voltsDuringCounts);

    /**
     * A request has ended.
     *
     * @param requestSequence what the request returned; tells requests apart only while they are open
     */
    void answered(String board, int requestSequence, Answer answer);

    /**
     * The link has changed, or its state has a new reason.
     *
     * @param detail one sentence for a person: what is the matter, and what to do about it
     */
    void link(String board, LinkState state, String detail);
}
