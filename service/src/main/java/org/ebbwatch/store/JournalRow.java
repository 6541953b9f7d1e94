package org.ebbwatch.store;

import java.util.UUID;

/**
 * One entry of a passage's journal. Scans are no rows: {@code positionMillis} says how many of them were folded before this
 * entry, so that trace and journal together can be folded again in the same order.
 *
 * @param passage whose journal
 * @param sequence orders the entries of a passage
 * @param eventMillis when it happened, in event time
 * @param positionMillis event time of the last scan folded before this entry; {@link #NO_SCAN}: none was
 * @param kind what the entry is
 * @param body the entry as text
 * @param wall when it was written, by the host's wall clock
 */
public record JournalRow(
        UUID passage, long sequence, long eventMillis, long positionMillis, String kind, String body, WallLabel wall) {

    public static final long NO_SCAN = Long.MIN_VALUE;
}
