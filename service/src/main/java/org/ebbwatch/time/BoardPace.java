package org.ebbwatch.time;

/**
 * How a board's time goes, from its identity.
 *
 * @param hasClock false for a board that cannot keep time: it is stamped by the host
 * @param speed event seconds per host second: 1 on a real board, more on a simulated one
 * @param intervalMillis event milliseconds between scans, 1 to {@value #MOST_INTERVAL_MILLIS}
 */
public record BoardPace(boolean hasClock, int speed, long intervalMillis) {

    /** The longest interval between scans that makes sense: a day. */
    public static final long MOST_INTERVAL_MILLIS = 86_400_000;

    private static final long LEAST_SILENCE_MILLIS = 5_000;
    private static final int SILENT_INTERVALS = 3;

    public BoardPace {
        if (speed < 1) {
            throw new IllegalArgumentException("speed must be at least 1, not " + speed);
        }
        if (intervalMillis < 1 || intervalMillis > MOST_INTERVAL_MILLIS) {
            throw new IllegalArgumentException("interval must be 1 to 86400000 ms, not " + intervalMillis);
        }
    }

    /** A real board with a clock. */
    public static BoardPace real(long intervalMillis) {
        return new BoardPace(true, 1, intervalMillis);
    }

    /** True for a board whose time goes as the host's does, so that the two can be compared. */
    public boolean realSpeed() {
        return speed == 1;
    }

    /** Event milliseconds without a complete scan that make a silence: the longer of 5 s and three intervals. */
    public long silenceMillis() {
        return Math.max(LEAST_SILENCE_MILLIS, SILENT_INTERVALS * intervalMillis);
    }
}
