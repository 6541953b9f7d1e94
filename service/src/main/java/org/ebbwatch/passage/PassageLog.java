package org.ebbwatch.passage;

import java.util.UUID;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Outcome.Event;

/** Where passages are written down, in the order of the calls. Nothing is promised to last before {@link #commit()}. */
public interface PassageLog {

    void opened(PassageCard card);

    /**
     * An entry that is not a scan; scans are kept by the trace.
     *
     * @param sequence its place among all entries of the passage, scans included, from 1
     * @param lastScanMillis event time of the last scan folded before it
     */
    void entered(UUID passage, long sequence, long lastScanMillis, Entry entry);

    /** What followed from the entry with that sequence. */
    void happened(UUID passage, long sequence, long eventMillis, Event event);

    /** Makes all of it last, after the readings it rests on. */
    void commit();
}
