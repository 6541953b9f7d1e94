package org.ebbwatch.evening;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import org.ebbwatch.acquire.SessionCounts;

/** How the lines to the boards did in the last hour: a sample each minute of event time. */
final class PortLog {
    private static final long EVERY_MILLIS = 60_000;
    private static final long KEPT_MILLIS = 3_600_000;

    private final Map<String, Deque<Sample>> samples = new HashMap<>();

    /**
     * The counts of one moment.
     *
     * @param bad damaged frames, and scans of which a part was missing
     */
    record Sample(long eventMillis, long scans, long bad, long silences, long losses) {
        static Sample of(long eventMillis, SessionCounts counts, long losses) {
            return new Sample(
                    eventMillis, counts.scans(), counts.badFrames() + counts.partialScans(), counts.silences(), losses);
        }

        Sample since(Sample earlier) {
            return new Sample(
                    eventMillis - earlier.eventMillis,
                    scans - earlier.scans,
                    bad - earlier.bad,
                    silences - earlier.silences,
                    losses - earlier.losses);
        }
    }

    /** Whether another sample is due. */
    boolean isDue(String board, long eventMillis) {
        Deque<Sample> its = samples.get(board);
        return its == null || eventMillis - its.getLast().eventMillis() >= EVERY_MILLIS;
    }

    void add(String board, Sample sample) {
        Deque<Sample> its = samples.computeIfAbsent(board, none -> new ArrayDeque<>());
        its.add(sample);
        while (its.size() > 1 && sample.eventMillis() - its.getFirst().eventMillis() > KEPT_MILLIS) {
            its.removeFirst();
        }
    }

    /** What happened up to now since the oldest sample; its event time is how long that is. */
    Sample sinceOldest(String board, Sample now) {
        Deque<Sample> its = samples.get(board);
        return now.since(its == null ? now : its.getFirst());
    }
}
