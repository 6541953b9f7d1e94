package org.ebbwatch.trace;

import org.ebbwatch.trace.codec.SegmentKey;
import org.ebbwatch.trace.codec.Sha256;

/**
 * A sealed segment's place in the chain of its channel.
 *
 * @param key whose segment it is, and its first sample
 * @param lastEventMillis event time of its last sample
 * @param samples how many it holds
 * @param previous digest of the segment before it, as this segment says; {@link Sha256#NONE}: it is the first of its channel
 * @param sha256 digest of this segment as it is stored now
 */
public record SegmentLink(SegmentKey key, long lastEventMillis, int samples, Sha256 previous, Sha256 sha256) {}
