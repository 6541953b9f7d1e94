package org.ebbwatch.evening.rule;

/** What a point of the check is about. */
public enum Matter {
    /** The load of a cell does what it is asked, or was seen to. */
    LOAD,
    /** A channel is attached to its cell. */
    LEAD,
    /** The temperature of a cell can be believed. */
    SENSOR,
    /** A person held the sensor and it rose. */
    TOUCH,
    /** The room is measured and cool enough. */
    AMBIENT,
    /** A board is connected, and its line has been good. */
    PORT,
    /** A board's clock runs as it should. */
    BOARD_CLOCK,
    /** The calibrations of a board's channels are not too old. */
    CALIBRATION,
    /** The host knows what time it is. */
    HOST_CLOCK,
    /** There is room for the night's records, and they can be kept. */
    STORAGE,
    /** What the rack file names is watched. */
    WATCHED,
    /** A test alarm left by an outlet, and a person had it. */
    OUTLET,
    /** Nothing waits for a person. */
    ALARM
}
