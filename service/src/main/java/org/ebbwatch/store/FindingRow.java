package org.ebbwatch.store;

import java.util.OptionalLong;
import java.util.UUID;

/**
 * Something the judge saw.
 *
 * @param passage whose
 * @param sequence orders the findings of a passage
 * @param kind which finding
 * @param raisedEventMillis event time of the entry that raised it
 * @param clearedEventMillis event time of the entry that cleared it; empty: it stands
 * @param evidence what was seen, as text
 */
public record FindingRow(
        UUID passage,
        long sequence,
        String kind,
        long raisedEventMillis,
        OptionalLong clearedEventMillis,
        String evidence) {}
