package org.ebbwatch.evening.rule;

import static java.util.Objects.requireNonNull;

import java.util.List;

/**
 * What is known of one board.
 *
 * @param connected whether it has proven who it is and is heard
 * @param detail what is the matter with its link, or who it is
 * @param clockOdd whether its clock was found wrong
 * @param celsius of its ambient sensor; NaN where there is none to believe
 * @param limitCelsius above which the room is too warm
 * @param watchedMillis for so long the figures below count, at most the last hour
 * @param losses how often the link was lost in that time
 * @param silences how often nothing was heard in that time
 * @param scans complete scans in that time
 * @param badFrames frames that were damaged, scans of which a part was missing, in that time
 * @param calibrations how many of its channels were calibrated
 * @param oldCalibrations those too old to go by, a few words each
 */
public record BoardFacts(
        String name,
        boolean connected,
        String detail,
        boolean clockOdd,
        double celsius,
        double limitCelsius,
        long watchedMillis,
        long losses,
        long silences,
        long scans,
        long badFrames,
        int calibrations,
        List<String> oldCalibrations) {
    public BoardFacts {
        requireNonNull(name);
        requireNonNull(detail);
        oldCalibrations = List.copyOf(oldCalibrations);
    }

    /** A board none of whose channels was calibrated. */
    public BoardFacts(
            String name,
            boolean connected,
            String detail,
            boolean clockOdd,
            double celsius,
            double limitCelsius,
            long watchedMillis,
            long losses,
            long silences,
            long scans,
            long badFrames) {
        this(
                name,
                connected,
                detail,
                clockOdd,
                celsius,
                limitCelsius,
                watchedMillis,
                losses,
                silences,
                scans,
                badFrames,
                0,
                List.of());
    }
}
