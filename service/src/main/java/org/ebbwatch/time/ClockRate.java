package org.ebbwatch.time;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * Compares the rate of a board's clock with the host's monotonic clock over ten minutes, for boards at real speed only.
 *
 * <p>A scan can arrive late but never early, so of every 30 s only the scan that was delayed least is kept, and the newest
 * of these is compared with the youngest that is at least ten minutes older. A clock is odd when it is more than 1 % off and
 * ordinary again below 0.9 % (both limits: this project's own choice; a crystal keeps 0.01 %, a resonator 0.5 %, from memory).
 *
 * <p>Memory: some 25 points of two longs. Not thread-safe.
 */
public final class ClockRate {

    private static final long WINDOW_MILLIS = 600_000;
    private static final long STRETCH_MILLIS = 30_000;
    private static final double ODD_ABOVE = 0.01;
    private static final double ORDINARY_BELOW = 0.009;

    private final Deque<Point> points = new ArrayDeque<>();
    private Point leastDelayed;
    private long stretchEndsHostMillis;
    private boolean odd;
    private double ratio = 1;

    private record Point(long boardMillis, long hostMillis) {
        long delay() {
            return hostMillis - boardMillis;
        }
    }

    /**
     * Takes one scan.
     *
     * @param boardMillis the board's clock on an unbroken line of any origin
     * @param hostMillis the host's monotonic clock on arrival
     */
    public void observe(long boardMillis, long hostMillis) {
        Point point = new Point(boardMillis, hostMillis);
        if (leastDelayed == null) {
            begin(point);
        } else if (hostMillis >= stretchEndsHostMillis) {
            points.addLast(leastDelayed);
            compare();
            begin(point);
        } else if (point.delay() < leastDelayed.delay()) {
            leastDelayed = point;
        }
    }

    /** Begins the ten minutes anew, after a restart of the board or of the host; an odd clock stays odd until it has shown better. */
    public void restart() {
        points.clear();
        leastDelayed = null;
    }

    /** The board's clock was seen to leap: odd at once, and the ten minutes begin anew. */
    public void leapt(double seenRatio) {
        restart();
        odd = true;
        ratio = seenRatio;
    }

    /** True while the clock is not to be trusted. */
    public boolean odd() {
        return odd;
    }

    /** Board time over host time as last compared; 1 before the first comparison. */
    public double ratio() {
        return ratio;
    }

    private void begin(Point point) {
        leastDelayed = point;
        stretchEndsHostMillis = point.hostMillis + STRETCH_MILLIS;
    }

    private void compare() {
        Point newest = points.getLast();
        Point reference = null;
        while (!points.isEmpty() && newest.hostMillis - points.getFirst().hostMillis >= WINDOW_MILLIS) {
            reference = points.removeFirst();
        }
        if (reference == null) {
            return;
        }
        points.addFirst(reference);
        ratio = (double) (newest.boardMillis - reference.boardMillis) / (newest.hostMillis - reference.hostMillis);
        double off = Math.abs(ratio - 1);
        odd = odd ? off >= ORDINARY_BELOW : off > ODD_ABOVE;
    }
}
