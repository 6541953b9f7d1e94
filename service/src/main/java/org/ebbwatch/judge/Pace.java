package org.ebbwatch.judge;

/**
 * How fast scans come, and which stretch between two of them nobody watched: one longer than the silence the procedure
 * allows and than three intervals, and one after which a silence was reported.
 *
 * <p>The interval is the shortest that came twice of late: two scans in time bring it down at once, late ones lift it by a
 * quarter each, so that a link which loses scans is not taken for a slow board, nor a slow board for a quick one.
 */
final class Pace {
    private static final double LONGEST_INTERVAL_MILLIS = 60_000;
    private static final double SLOWING = 1.25;
    private static final int INTERVALS = 3;
    private static final long NEVER = Long.MIN_VALUE;

    private long scanMillis = NEVER;
    private long knownMillis = NEVER;
    private double latestMillis;
    private double usualMillis;
    private boolean silent;

    /** Milliseconds from the scan before, or from the end of a gap, to this moment; 0 before the first scan. */
    long since(long millis) {
        return knownMillis == NEVER ? 0 : millis - knownMillis;
    }

    /** The longest stretch that is no gap; before any interval is known, the longest a board may have. */
    long longestMillis(long silentMillis) {
        double most = usualMillis == 0 ? LONGEST_INTERVAL_MILLIS : INTERVALS * usualMillis;
        return Math.max(silentMillis, Math.round(most));
    }

    /** A scan came; gives the milliseconds watched since the one before. */
    long heard(long millis) {
        long watched = silent ? 0 : since(millis);
        if (scanMillis != NEVER) {
            learn(Math.min((double) (millis - scanMillis), LONGEST_INTERVAL_MILLIS));
        }
        scanMillis = millis;
        knownMillis = millis;
        silent = false;
        return watched;
    }

    private void learn(double interval) {
        double twice = Math.max(interval, latestMillis);
        latestMillis = interval;
        boolean slower = usualMillis > 0 && twice > usualMillis;
        usualMillis = slower ? Math.min(twice, SLOWING * usualMillis) : twice;
    }

    /** The stretch up to this moment is a gap. */
    void missed(long millis) {
        knownMillis = millis;
    }

    /** Nothing came for the time allowed; the stretch up to the next scan is not watched. */
    void silent() {
        silent = true;
    }
}
