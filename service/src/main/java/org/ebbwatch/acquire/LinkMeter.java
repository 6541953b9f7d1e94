package org.ebbwatch.acquire;

import org.ebbwatch.rig.wire.FrameDecoder;
import org.ebbwatch.rig.wire.Rejection;
import org.ebbwatch.time.LastSeen;

/**
 * Measures the line to one board. The jitter is the interarrival jitter of RFC 3550, 6.4.1 and 6.4.4: a sixteenth of each new deviation
 * is taken over. The round trip is smoothed as RFC 6298, 2.3 smooths it: an eighth. (Both from memory.)
 */
final class LinkMeter {
    private static final double JITTER_SHARE = 1.0 / 16;
    private static final double ROUND_TRIP_SHARE = 1.0 / 8;
    private static final double NANOS_PER_MILLI = 1e6;

    private LastSeen before;
    private double jitterMillis = Double.NaN;
    private double roundTripMillis = Double.NaN;
    private long crcErrors;
    private long frames;
    private long badFrames;
    private long framesMissed;

    /** A decoder is done with; what it counted is kept. */
    void add(FrameDecoder decoder) {
        frames += decoder.framesGood();
        badFrames += decoder.framesBad();
        framesMissed += decoder.sequenceGaps();
        before = null;
    }

    void rejected(Rejection why) {
        crcErrors += why instanceof Rejection.BadCrc ? 1 : 0;
    }

    /** The next scan of a board with a clock at real speed. */
    void scan(LastSeen scan) {
        if (before != null && before.bootNumber() == scan.bootNumber()) {
            double arrived = (scan.host().monotonicNanos() - before.host().monotonicNanos()) / NANOS_PER_MILLI;
            double deviation = Math.abs(arrived - (scan.eventMillis() - before.eventMillis()));
            jitterMillis =
                    Double.isNaN(jitterMillis) ? deviation : jitterMillis + (deviation - jitterMillis) * JITTER_SHARE;
        }
        before = scan;
    }

    /** Scans are missing: what comes next says nothing of the line. */
    void gap() {
        before = null;
    }

    void roundTrip(long millis) {
        roundTripMillis = Double.isNaN(roundTripMillis)
                ? millis
                : roundTripMillis + (millis - roundTripMillis) * ROUND_TRIP_SHARE;
    }

    LinkQuality quality(FrameDecoder decoder, SessionCounts counts, long gaps) {
        long bad = badFrames + decoder.framesBad();
        return new LinkQuality(
                frames + decoder.framesGood(),
                crcErrors,
                bad - crcErrors,
                framesMissed + decoder.sequenceGaps(),
                counts.scans(),
                counts.partialScans(),
                gaps,
                counts.silences(),
                jitterMillis,
                roundTripMillis);
    }
}
