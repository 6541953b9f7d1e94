package org.ebbwatch.judge;

import org.ebbwatch.judge.Entry.Scan;

/**
 * Finds a temperature that stands still although its last digit used to flicker and the room's still moves. A sensor with
 * coarse counts may stand still all night: only one whose reading changed in at least a third of the scans before it froze
 * is suspected.
 */
final class FrozenWatch {
    private static final long FROZEN_MILLIS = 600_000;
    private static final int NEIGHBOUR_STEPS = 60;
    private static final double LIVELY_SHARE = 1.0 / 3;
    private static final double WEIGHT = 1.0 / 128;

    private double lastCelsius = Double.NaN;
    private double lastAmbient = Double.NaN;
    private long sameSinceMillis;
    private int neighbourSteps;
    private double changingShare;
    private double shareWhenItStopped;

    boolean isFrozen(Scan scan) {
        boolean changed = scan.celsius() != lastCelsius;
        if (scan.ambientCelsius() != lastAmbient) {
            neighbourSteps++;
        }
        changingShare += ((changed ? 1 : 0) - changingShare) * WEIGHT;
        if (changed) {
            sameSinceMillis = scan.eventMillis();
            neighbourSteps = 0;
            shareWhenItStopped = changingShare;
        }
        lastCelsius = scan.celsius();
        lastAmbient = scan.ambientCelsius();
        return !changed
                && shareWhenItStopped >= LIVELY_SHARE
                && neighbourSteps >= NEIGHBOUR_STEPS
                && scan.eventMillis() - sameSinceMillis >= FROZEN_MILLIS;
    }

    /** A person dealt with it: it is given its time again, but a reading that still stands is suspected anew. */
    void forget(long millis) {
        sameSinceMillis = millis;
        neighbourSteps = 0;
    }
}
