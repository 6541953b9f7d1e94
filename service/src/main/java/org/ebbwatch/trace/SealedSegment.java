package org.ebbwatch.trace;

import org.ebbwatch.trace.codec.Samples;
import org.ebbwatch.trace.codec.SegmentCodec;
import org.ebbwatch.trace.codec.SegmentKey;
import org.ebbwatch.trace.codec.Sha256;

/** An encoded segment with what its row in the database says of it. */
record SealedSegment(
        SegmentKey key, BoardBoot boot, long lastScan, long lastEventMillis, int samples, Sha256 hash, byte[] body) {

    static SealedSegment of(OpenBlock block, int channel, Sha256 previous) {
        BoardBoot boot = block.boot();
        SegmentKey key =
                new SegmentKey(boot.board(), channel, boot.bootNumber(), block.firstScan(), block.firstEventMillis());
        Samples samples = block.samples(channel);
        byte[] body = SegmentCodec.encode(key, boot.identityHash(), previous, samples);
        return new SealedSegment(
                key, boot, block.lastScan(), block.lastEventMillis(), samples.count(), Sha256.of(body), body);
    }

    /** Whether both hold the same scans, of two channels. */
    boolean isOfBlock(SealedSegment other) {
        return key.board().equals(other.key.board()) && key.firstEventMillis() == other.key.firstEventMillis();
    }
}
