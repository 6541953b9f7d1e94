package org.ebbwatch.judge;

/** Whether something has been so for at least two scans and two seconds, so that no single reading decides it. */
final class Confirmation {
    private static final int SCANS = 2;
    private static final long LASTS_MILLIS = 2_000;

    private int scans;
    private long sinceMillis;

    /** Takes one reading; says whether it has been so for long enough. */
    boolean holds(boolean so, long millis) {
        if (!so) {
            scans = 0;
            return false;
        }
        if (scans == 0) {
            sinceMillis = millis;
        }
        scans = Math.min(scans + 1, SCANS);
        return isHeld(millis);
    }

    /** As of the last reading taken. */
    boolean isHeld(long millis) {
        return scans >= SCANS && millis - sinceMillis >= LASTS_MILLIS;
    }

    /** Readings before and after cannot be compared. */
    void forget() {
        scans = 0;
    }
}
