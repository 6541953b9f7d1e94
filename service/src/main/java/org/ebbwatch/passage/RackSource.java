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
     * @param window what of it
     * @param points about how many, 10 to 10,000
     * @return empty if there is no such passage
     */
    Optional<List<TracePoint>> trace(UUID passage, Window window, int points);

    /** What the voltage of a resting cell comes to; empty if the passage does not rest, or has too few readings yet. */
    Optional<RestPrediction> restPrediction(UUID passage);

    /**
     * Passages that are over, in this run of the service or before it, the one that was opened last first.
     *
     * @param before only those opened before the passage with that id
     * @param most how many at most, from 1
     */
    List<ClosedPassage> closed(Optional<UUID> before, int most);

    /**
     * A stretch of event time, both ends within it.
     *
     * @param toMillis not before {@code fromMillis}
     */
    record Window(long fromMillis, long toMillis) {
        /** All there is. */
        public static final Window ALL = new Window(Long.MIN_VALUE, Long.MAX_VALUE);

        public Window {
            if (toMillis < fromMillis) {
                throw new IllegalArgumentException("from " + fromMillis + " to " + toMillis + " is no stretch of time");
            }
        }
    }

    /**
     * One point of a trace.
     *
     * @param eventMillis event time
     * @param volts NaN where not read
     * @param celsius NaN where not read
     */
    record TracePoint(long eventMillis, double volts, double celsius, boolean loadApplied) {}
}
