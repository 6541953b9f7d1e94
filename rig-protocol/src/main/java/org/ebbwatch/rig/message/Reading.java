package org.ebbwatch.rig.message;

/**
 * One channel of one scan, in counts of the board's {@link Scales}. A number without its valid bit means nothing.
 *
 * @param state the bits below, 0 to 127
 * @param volts counts
 * @param celsius counts
 * @param amperes counts, discharge positive; 0 where the scan carries none
 */
public record Reading(int state, int volts, int celsius, int amperes) {
    /** The volts are a measurement. */
    public static final int VOLTS_VALID = 1;
    /** The temperature is a measurement. */
    public static final int CELSIUS_VALID = 2;
    /** The current is a measurement. */
    public static final int AMPERES_VALID = 4;
    /** The converter gave its lowest or highest code: the true voltage may lie beyond. The volts stay valid. */
    public static final int VOLTS_AT_RAIL = 8;
    /** The temperature's converter gave an end of its range, or what no temperature gives: no temperature, valid or not. */
    public static final int CELSIUS_AT_RAIL = 16;
    /** The load is connected: what the switch does, not what was asked of it. */
    public static final int LOAD_APPLIED = 32;
    /** The temperature sensor or its lead is open, or does not answer; the temperature is not valid. */
    public static final int SENSOR_OPEN = 64;

    public Reading {
        Bounds.within("state", state, 0, 127);
    }

    /** Whether every bit of the mask is set in the state. */
    public boolean is(int mask) {
        return (state & mask) == mask;
    }
}
