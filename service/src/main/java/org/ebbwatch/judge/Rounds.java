package org.ebbwatch.judge;

/**
 * The rounds of draining and resting: after each complete hold from which a cell came back the next is twice as long, until
 * two of them in a row brought nothing.
 */
final class Rounds {
    private static final double LONGER = 1.1;
    private static final int MOST_DOUBLINGS = 16;

    private int count;
    private int doublings;
    private long beganMillis = -1;
    private boolean holdDone;
    private long reboundAfterMillis = -1;
    private int noLonger;

    void begin(long millis) {
        count++;
        holdDone = false;
        if (beganMillis < 0) {
            beganMillis = millis;
        }
    }

    /** The cell came back although its hold was complete: the next one is longer. */
    void cameBack() {
        if (holdDone) {
            doublings = Math.min(doublings + 1, MOST_DOUBLINGS);
        }
    }

    /** A person decided to go on; what was tried in vain is forgotten. */
    void decided(long millis) {
        beganMillis = millis;
        reboundAfterMillis = -1;
        noLonger = 0;
    }

    int count() {
        return count;
    }

    /** Since the first drain began, or a person decided to go on. */
    long drainingMillis(long millis) {
        return millis - beganMillis;
    }

    /** How long this round must hold, given the hold of the first. */
    long holdMillis(long firstMillis) {
        return firstMillis << doublings;
    }

    void holdDone() {
        holdDone = true;
    }

    void holdBroken() {
        holdDone = false;
    }

    boolean isHoldDone() {
        return holdDone;
    }

    /** A cell came back; says whether two complete holds in a row kept it down no longer than the one before. */
    boolean reboundTookNoLonger(long afterMillis) {
        if (!holdDone) {
            return false;
        }
        noLonger = reboundAfterMillis >= 0 && afterMillis <= LONGER * reboundAfterMillis ? noLonger + 1 : 0;
        reboundAfterMillis = afterMillis;
        return noLonger >= 2;
    }
}
