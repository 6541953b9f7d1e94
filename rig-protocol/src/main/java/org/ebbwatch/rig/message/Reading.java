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
    /** The volts stand at an end of the converter's range: the true voltage may lie beyond. */
    public static final int VOLTS_AT_RAIL = 8;
    /** The temperature stands at an end of its converter's or sensor's range. */
    public static final int CELSIUS_AT_RAIL = 16;
    /** The load is connected: what the switch does, not what was asked of it. */
    public static final int LOAD_APPLIED = 32;
    /** The temperature sensor is open or absent by the board's own check. */
    public static final int SENSOR_OPEN = 64;

    public Reading {
        Bounds.within("state", state, 0, 127);
    }

    /** Whether every bit of the mask is set in the state. */
    public boolean is(int mask) {
        return (state & mask) == mask;
    }
}
