package org.ebbwatch.judge.estimate;

/**
 * A clock that runs only while somebody is watching. It counts the time between readings, pauses where there was none,
 * and knows how much of its latest run was unbroken.
 */
public final class WatchClock {
    private long elapsedMillis;
    private long unbrokenMillis;

    /** A watched stretch. */
    public void run(long millis) {
        elapsedMillis += millis;
        unbrokenMillis += millis;
    }

    /** A stretch nobody watched: the clock stands, and the unbroken run begins anew. */
    public void pause() {
        unbrokenMillis = 0;
    }

    /** All starts again. */
    public void restart() {
        elapsedMillis = 0;
        unbrokenMillis = 0;
    }

    /** Another watch begins; how long the watching has been unbroken goes on. */
    public void next() {
        elapsedMillis = 0;
    }

    public long elapsedMillis() {
        return elapsedMillis;
    }

    public long unbrokenMillis() {
        return unbrokenMillis;
    }
}
