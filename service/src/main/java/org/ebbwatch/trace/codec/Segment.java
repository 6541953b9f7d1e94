package org.ebbwatch.trace.codec;

/**
 * A decoded segment.
 *
 * @param key whose it is
 * @param identity digest of the board's identity, by whose scales the counts are to be read
 * @param previous digest of the encoded segment before it of the same board and channel; {@link Sha256#NONE}: it is the first
 * @param samples what was read
 */
public record Segment(SegmentKey key, Sha256 identity, Sha256 previous, Samples samples) {}
