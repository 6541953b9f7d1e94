package org.ebbwatch.judge;

/**
 * What follows when a load that hands switch was put on or taken off and nobody said so. Nothing more than from a word: rest still
 * needs both its proofs. In a string nothing is concluded from one cell's step, because the load is all its cells'.
 */
final class Hands {
    private static final long SAY_MILLIS = 300_000;
    private static final long NEVER = Long.MIN_VALUE / 2;
    private static final String SEEMS_OFF = "the load seems to have been taken off";
    private static final String SEEMS_ON = "the load seems to have been put on";
    private static final String LOOK = "; if its lead fell off, put it back";

    private final Passage passage;
    private final LoadWatch load;
    private final HandStep step;
    private final Rounds rounds;
    private long aboveSinceMillis = NEVER;

    Hands(Passage passage) {
        this.passage = passage;
        this.load = passage.load();
        this.step = passage.channel().hand();
        this.rounds = passage.rounds();
    }

    /** Takes a step that can be nothing else for the word nobody said. */
    void recognise() {
        if (!step.isCertain() || passage.cell().isInString()) {
            return;
        }
        boolean drain = passage.phase() == Phase.DRAIN;
        if (load.isOn()) {
            if (drain && load.isHandOn()) {
                takenOff();
            }
        } else if (passage.phase() == Phase.CHECK_IN || passage.phase() == Phase.REST || drain) {
            putOn(drain);
        }
    }

    private void takenOff() {
        load.seenOff(step.beforeVolts());
        step.forget();
        passage.enterRest(SEEMS_OFF + (rounds.isHoldDone() ? " after its hold" : " early") + LOOK);
    }

    private void putOn(boolean drain) {
        if (!passage.polarity().isProven()) {
            return;
        }
        load.byHand(true);
        step.forget();
        if (drain) {
            passage.enter(Phase.DRAIN, SEEMS_ON);
        } else {
            passage.drainAgain(SEEMS_ON);
        }
    }

    /** The voltage is above the drain limit: whether hands may be taking the load off after its hold, and have time to say so. */
    boolean mayBeAtIt(long millis) {
        if (passage.cell().switched() || !rounds.isHoldDone()) {
            return false;
        }
        if (aboveSinceMillis == NEVER) {
            aboveSinceMillis = millis;
        }
        return millis - aboveSinceMillis < SAY_MILLIS;
    }

    /** It is below the limit. */
    void leftIt() {
        aboveSinceMillis = NEVER;
    }
}
