package org.ebbwatch.passage;

import java.util.List;
import org.ebbwatch.trace.codec.Sha256;

/**
 * The sealed segments that hold a passage's readings, as they are stored now. Readings that no segment holds yet are in none.
 *
 * @param stays one for each channel the passage was on, in order
 */
public record PassageChain(List<Stay> stays) {
    /** Nothing was sealed. */
    public static final PassageChain NONE = new PassageChain(List.of());

    /**
     * A stay on one channel.
     *
     * @param board the rack's name for it
     * @param channel from 0
     * @param fromMillis event time, included
     * @param toMillis event time, not included
     * @param links of the segments that hold some of it, oldest first
     */
    public record Stay(String board, int channel, long fromMillis, long toMillis, List<Link> links) {}

    /**
     * One segment.
     *
     * @param previous digest of the segment before it, as this one says; {@link Sha256#NONE}: it is the first of its channel
     * @param sha256 digest of the segment as it is stored
     */
    public record Link(
            long bootNumber,
            long firstScan,
            long firstEventMillis,
            long lastEventMillis,
            int samples,
            Sha256 previous,
            Sha256 sha256) {}
}
