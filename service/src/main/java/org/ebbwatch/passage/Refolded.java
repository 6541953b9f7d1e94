package org.ebbwatch.passage;

import java.util.List;
import java.util.Optional;
import org.ebbwatch.judge.Judge;
import org.ebbwatch.judge.Outcome;
import org.ebbwatch.passage.RackView.Past;

/**
 * A passage folded again from what is stored of it.
 *
 * @param judge as it stands after the last entry
 * @param sequence of the last entry
 * @param changedSequence of the last entry by which something changed that a person goes by
 * @param channel the one it is on now
 * @param lastScanMillis event time of the last scan
 * @param told every phase change and every finding that came or went, in order
 */
public record Refolded(
        Judge judge, long sequence, long changedSequence, int channel, long lastScanMillis, List<Told> told) {

    /** What the fold told, and when. */
    public record Told(long eventMillis, Outcome.Event event) {}

    /** Every phase change and finding, one line each; see {@link StoredRack#recorded}. */
    public List<String> events() {
        return told.stream()
                .map(it -> EventLine.of(it.eventMillis(), it.event()))
                .flatMap(Optional::stream)
                .toList();
    }

    /** The same for people. */
    List<Past> past() {
        return told.stream()
                .map(it -> Past.of(it.eventMillis(), it.event()))
                .flatMap(Optional::stream)
                .toList();
    }
}
