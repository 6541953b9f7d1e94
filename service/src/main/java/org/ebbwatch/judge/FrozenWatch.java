package org.ebbwatch.judge;

import org.ebbwatch.judge.Entry.Scan;

/**
 * Finds a temperature that stands still although its last digit used to flicker and the room's still moves. A sensor with
 * coarse counts may stand still all night: only one whose reading changed in at least a third of the scans before it froze
 * is suspected.
 *
 * <p>A frozen one is good again once it flickers at least half as much as before, whatever a person says; where a person
 * dealt with it, it may be another one, and three changes will do.
 */
final class FrozenWatch {
    private static final long FROZEN_MILLIS = 600_000;
    private static final int NEIGHBOUR_STEPS = 60;
    private static final double LIVELY_SHARE = 1.0 / 3;
    private static final double WEIGHT = 1.0 / 128;
    private static final double THAWING_WEIGHT = 1.0 / 16;
    private static final double THAWED_SHARE = 0.5;
    private static final int CHANGES_AFTER_WORK = 3;

    private double lastCelsius = Double.NaN;
    private double lastAmbient = Double.NaN;
    private long sameSinceMillis;
    private int neighbourSteps;
    private double changingShare;
    private double shareWhenItStopped;
    private boolean frozen;
    private boolean workedOn;
    private int changes;
    private double thawingShare;

    boolean isFrozen(Scan scan) {
        boolean changed = scan.celsius() != lastCelsius;
        boolean neighbourChanged = scan.ambientCelsius() != lastAmbient;
        lastCelsius = scan.celsius();
        lastAmbient = scan.ambientCelsius();
        if (frozen) {
            thaw(changed);
        } else {
            watch(scan.eventMillis(), changed, neighbourChanged);
        }
        return frozen;
    }

    private void watch(long millis, boolean changed, boolean neighbourChanged) {
        neighbourSteps += neighbourChanged ? 1 : 0;
        changingShare += ((changed ? 1 : 0) - changingShare) * WEIGHT;
        if (changed) {
            sameSinceMillis = millis;
            neighbourSteps = 0;
            shareWhenItStopped = changingShare;
        }
        frozen = !changed
                && shareWhenItStopped >= LIVELY_SHARE
                && neighbourSteps >= NEIGHBOUR_STEPS
                && millis - sameSinceMillis >= FROZEN_MILLIS;
        if (frozen) {
            workedOn = false;
            changes = 0;
            thawingShare = 0;
        }
    }

    private void thaw(boolean changed) {
        changes += changed ? 1 : 0;
        thawingShare += ((changed ? 1 : 0) - thawingShare) * THAWING_WEIGHT;
        boolean flickers = thawingShare >= THAWED_SHARE * shareWhenItStopped;
        boolean another = workedOn && changes >= CHANGES_AFTER_WORK;
        if (flickers || another) {
            frozen = false;
            neighbourSteps = 0;
            changingShare = flickers ? shareWhenItStopped : 0;
            shareWhenItStopped = changingShare;
        }
    }

    /** A person dealt with the sensor. */
    void workedOn() {
        workedOn = true;
        changes = 0;
    }
}
