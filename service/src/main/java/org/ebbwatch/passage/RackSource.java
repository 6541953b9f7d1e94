package org.ebbwatch.passage;

import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** What the outside may look at. Safe for use by several threads. */
public interface RackSource {

    /** The rack at this moment. */
    RackView view();

    /**
     * The trace of a passage so far, thinned out so that no peak is lost.
     *
     * @param points about how many, 10 to 10,000
     * @return empty if there is no such passage
     */
    Optional<List<TracePoint>> trace(UUID passage, int points);

    /**
     * One point of a trace.
     *
     * @param eventMillis event time
     * @param volts NaN where not read
     * @param celsius NaN where not read
     */
    record TracePoint(long eventMillis, double volts, double celsius, boolean loadApplied) {}
}
