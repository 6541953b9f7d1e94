package org.ebbwatch.night;

import org.ebbwatch.judge.Outcome;

/** Looks on while a night goes by. */
@FunctionalInterface
interface Onlooker {
    /** The judge of a channel said something at this moment. */
    void sees(int channel, long millis, Outcome.Event event);
}
