package org.ebbwatch.sim.rack;

/**
 * How far an accelerated board may run ahead of its host: 2 s of event time past the last scan that the host said it holds,
 * and always one scan when nothing intact is outstanding. At speed 1 a board runs as a real one does, host or no host.
 */
final class Credit {
    static final long AHEAD_MOST_MILLIS = 2_000;

    private static final int KEPT = 256;

    private final boolean unlimited;
    private final long[] millisOfScan = new long[KEPT];
    private long acknowledgedMillis;
    private long acknowledgedScan;
    private long lastIntactScan;

    Credit(int speed) {
        unlimited = speed <= 1;
    }

    /** A scan was handed to the wire. */
    void sent(long scan, long eventMillis, boolean intact) {
        millisOfScan[(int) (scan % KEPT)] = eventMillis;
        if (intact) {
            lastIntactScan = scan;
        }
    }

    /** The host holds everything up to this scan. */
    void acknowledged(long scan) {
        if (scan > acknowledgedScan && scan <= lastIntactScan) {
            acknowledgedScan = scan;
            acknowledgedMillis = lastIntactScan - scan < KEPT ? millisOfScan[(int) (scan % KEPT)] : acknowledgedMillis;
        }
    }

    /** Nothing sent so far will be acknowledged: the host is new, or the board was silent or began again. */
    void restart(long eventMillis, long lastScan) {
        acknowledgedMillis = eventMillis;
        acknowledgedScan = lastScan;
        lastIntactScan = lastScan;
    }

    boolean allows(long nextMillis) {
        return unlimited || lastIntactScan <= acknowledgedScan || nextMillis - acknowledgedMillis <= AHEAD_MOST_MILLIS;
    }
}
