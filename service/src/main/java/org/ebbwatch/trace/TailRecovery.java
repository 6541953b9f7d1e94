package org.ebbwatch.trace;

import java.util.List;

/**
 * What was found in the tail when the trace was opened.
 *
 * @param scansTaken scans that were in no segment yet
 * @param scansSealedBefore scans that were in a segment already: the last run ended between sealing and clearing up
 * @param damages what was no whole scan; normally empty, one torn end after a power cut
 */
public record TailRecovery(long scansTaken, long scansSealedBefore, List<TailDamage> damages) {}
