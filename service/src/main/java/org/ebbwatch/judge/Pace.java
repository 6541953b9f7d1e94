package org.ebbwatch.judge;

/**
 * How fast scans come, and which stretch between two of them nobody watched: one longer than the silence the procedure
 * allows and than three intervals, and one after which a silence was reported.
 */
final class Pace {
    private static final long LONGEST_INTERVAL_MILLIS = 2_000;
    private static final int INTERVALS = 3;
    private static final long NEVER = Long.MIN_VALUE;

    private long lastMillis = NEVER;
    private double usualMillis;
    private boolean silent;

    /** Milliseconds from the scan before to this moment; 0 before the first scan. */
    long since(long millis) {
        return lastMillis == NEVER ? 0 : millis - lastMillis;
    }

    /** The longest stretch that is no gap. */
    long longestMillis(long silentMillis) {
        return Math.max(silentMillis, Math.round(INTERVALS * usualMillis));
    }

    /** A scan came; gives the milliseconds watched since the one before. */
    long heard(long millis) {
        long step = since(millis);
        long interval = Math.min(step, LONGEST_INTERVAL_MILLIS);
        usualMillis = usualMillis == 0 ? interval : usualMillis + (interval - usualMillis) / 16;
        lastMillis = millis;
        boolean watched = !silent;
        silent = false;
        return watched ? step : 0;
    }

    /** The stretch up to this moment is a gap. */
    void missed(long millis) {
        lastMillis = millis;
    }

    /** Nothing came for the time allowed; the stretch up to the next scan is not watched. */
    void silent() {
        silent = true;
    }
}
