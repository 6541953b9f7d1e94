package org.ebbwatch.sim.fault;

/**
 * When a fault begins: so long after something happened.
 *
 * @param after what happened, on the fault's channel
 * @param occurrence the how-manieth time, 1 for the first
 * @param offsetMillis event time from then on, 0 or more
 */
public record Trigger(Happening after, int occurrence, long offsetMillis) {
    public Trigger {
        if (occurrence < 1) {
            throw new IllegalArgumentException("occurrence is " + occurrence + ", allowed is 1 or more");
        }
        if (offsetMillis < 0) {
            throw new IllegalArgumentException("offset is " + offsetMillis + " ms, allowed is 0 or more");
        }
    }

    /** At an event time. */
    public static Trigger at(long eventMillis) {
        return new Trigger(Happening.START, 1, eventMillis);
    }

    /** So long after the first time. */
    public static Trigger after(Happening happening, long offsetMillis) {
        return new Trigger(happening, 1, offsetMillis);
    }
}
