package org.ebbwatch.acquire;

/**
 * What a session has counted since it was made; for a health line.
 *
 * @param scans complete scans handed on
 * @param partialScans scans of which not every channel came
 * @param repeatedScans scans, or parts, dropped because they were repeated or late
 * @param unattributedFrames readings dropped because the board had not said yet who it is
 * @param misfitFrames readings of channels the board does not have
 * @param unexpectedAnswers answers to no open request
 * @param badFrames frames rejected, for any reason
 * @param silences silences told
 */
public record SessionCounts(
        long scans,
        long partialScans,
        long repeatedScans,
        long unattributedFrames,
        long misfitFrames,
        long unexpectedAnswers,
        long badFrames,
        long silences) {}
