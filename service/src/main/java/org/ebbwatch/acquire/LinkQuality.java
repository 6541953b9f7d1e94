package org.ebbwatch.acquire;

/**
 * How good the line to a board has been since the service began.
 *
 * @param frames intact frames
 * @param crcErrors frames whose checksum did not fit
 * @param otherBadFrames frames dropped for any other reason: cut short, too long, not readable
 * @param framesMissed times that a frame's number was not one more than the one before
 * @param scans complete scans
 * @param partialScans scans of which not every channel came
 * @param gaps times that scans were missing before one that came
 * @param silences times that nothing was heard for the time allowed
 * @param jitterMillis by how much scans come earlier or later than the board's clock says, smoothed; NaN where that says nothing
 * @param roundTripMillis from a question or request to its answer, smoothed; NaN before the first
 */
public record LinkQuality(
        long frames,
        long crcErrors,
        long otherBadFrames,
        long framesMissed,
        long scans,
        long partialScans,
        long gaps,
        long silences,
        double jitterMillis,
        double roundTripMillis) {}
