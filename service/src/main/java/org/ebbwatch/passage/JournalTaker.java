package org.ebbwatch.passage;

import org.ebbwatch.judge.Entry;

/**
 * Is told a passage in the order in which it was folded first. Sequence numbers start at 1 and have no holes, scans and
 * other entries together.
 */
public interface JournalTaker {

    /** The scans that follow were made of what this board measured. */
    default void board(HeardBoard board) {}

    /** Takes a scan; says whether to go on. */
    boolean scan(long sequence, Entry.Scan scan);

    /** Takes any other entry; says whether to go on. */
    boolean entry(long sequence, KeptEntry kept);
}
