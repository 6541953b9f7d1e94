package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import org.ebbwatch.acquire.LinkQuality;

/**
 * How good the line to a board has been since the service began.
 *
 * @param frames intact frames
 * @param crcErrors frames whose checksum did not fit
 * @param otherBadFrames frames dropped for another reason
 * @param framesMissed times that a frame's number was not one more than the one before
 * @param scans complete scans
 * @param partialScans scans of which not every channel came
 * @param gaps times that scans were missing
 * @param silences times that nothing was heard for the time allowed
 * @param jitterMillis by how much scans come earlier or later than the board's clock says (RFC 3550); null where that says nothing
 * @param roundTripMillis from a question to its answer, smoothed (RFC 6298); null before the first
 */
@Serdeable
public record LinkAnswer(
        long frames,
        long crcErrors,
        long otherBadFrames,
        long framesMissed,
        long scans,
        long partialScans,
        long gaps,
        long silences,
        @Nullable Double jitterMillis,
        @Nullable Double roundTripMillis) {

    @Nullable static LinkAnswer of(@Nullable LinkQuality quality) {
        return quality == null
                ? null
                : new LinkAnswer(
                        quality.frames(),
                        quality.crcErrors(),
                        quality.otherBadFrames(),
                        quality.framesMissed(),
                        quality.scans(),
                        quality.partialScans(),
                        quality.gaps(),
                        quality.silences(),
                        Figures.coarse(quality.jitterMillis()),
                        Figures.coarse(quality.roundTripMillis()));
    }
}
