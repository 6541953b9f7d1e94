package org.ebbwatch.judge;

/**
 * Whether the cell was ever seen above the proof voltage with the right polarity, for ten seconds on end. An opened
 * disconnect, a fuse, a protection board and a reversed cell on a unipolar converter all read zero while full.
 */
final class PolarityProof {
    private static final long PROOF_MILLIS = 10_000;

    private long aboveSinceMillis = -1;
    private boolean proven;

    void follow(long millis, boolean above) {
        if (!above) {
            aboveSinceMillis = -1;
            return;
        }
        if (aboveSinceMillis < 0) {
            aboveSinceMillis = millis;
        }
        proven |= millis - aboveSinceMillis >= PROOF_MILLIS;
    }

    void interrupt() {
        aboveSinceMillis = -1;
    }

    /** What was proven may belong to another cell, or to a cell that has since cut off. */
    void revoke() {
        proven = false;
        interrupt();
    }

    boolean isProven() {
        return proven;
    }
}
