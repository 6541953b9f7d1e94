package org.ebbwatch.passage;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.acquire.LinkQuality;

/** What the outside may look at. Safe for use by several threads. */
public interface RackSource {

    /** The rack at this moment. */
    RackView view();

    /** How good the lines to the boards are, by their names; none where there is nothing to measure. */
    default Map<String, LinkQuality> linkQualities() {
        return Map.of();
    }

    /**
     * The trace of a passage so far, or to its end, thinned out so that no peak is lost.
     *
     * @param points about how many, 10 to 10,000
     * @return empty if there is no such passage
     */
    Optional<List<TracePoint>> trace(UUID passage, int points);

    /**
     * Passages that are over, in this run of the service or before it, the one that was opened last first.
     *
     * @param before only those opened before the passage with that id
     * @param most how many at most, from 1
     */
    List<ClosedPassage> closed(Optional<UUID> before, int most);

    /**
     * One point of a trace.
     *
     * @param eventMillis event time
     * @param volts NaN where not read
     * @param celsius NaN where not read
     */
    record TracePoint(long eventMillis, double volts, double celsius, boolean loadApplied) {}
}
