package org.ebbwatch.trace;

import java.util.List;

/**
 * What a walk along all segments of a channel found.
 *
 * @param segments how many there are
 * @param samples how many samples they hold
 * @param faults every segment that is damaged, or does not follow from the one before it; empty: the chain is whole
 */
public record ChainReport(long segments, long samples, List<String> faults) {

    public boolean isWhole() {
        return faults.isEmpty();
    }
}
