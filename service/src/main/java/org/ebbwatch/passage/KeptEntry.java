package org.ebbwatch.passage;

import org.ebbwatch.judge.Entry;

/**
 * An entry other than a scan as the journal keeps it.
 *
 * @param sequence its place among all entries of the passage as it was counted first, from 1
 * @param afterScanMillis event time of the last scan folded before it
 * @param wallMillis when it was written down, a label
 * @param entry what was entered
 */
public record KeptEntry(long sequence, long afterScanMillis, long wallMillis, Entry entry) {}
