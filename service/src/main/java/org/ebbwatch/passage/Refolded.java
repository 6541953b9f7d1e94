package org.ebbwatch.passage;

import java.util.List;
import org.ebbwatch.judge.Judge;
import org.ebbwatch.passage.RackView.Past;

/**
 * A passage folded again from what is stored of it.
 *
 * @param judge as it stands after the last entry
 * @param sequence of the last entry
 * @param changedSequence of the last entry by which something changed that a person goes by
 * @param channel the one it is on now
 * @param lastScanMillis event time of the last scan
 * @param events every phase change and finding, one line each, in order; see {@link StoredRack#recorded}
 * @param past the same for people
 */
public record Refolded(
        Judge judge,
        long sequence,
        long changedSequence,
        int channel,
        long lastScanMillis,
        List<String> events,
        List<Past> past) {}
