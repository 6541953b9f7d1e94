package org.ebbwatch.sizing;

/** Where a resistor gives its heat to. */
public enum Mounting {
    /** To the air around it. */
    FREE_AIR,
    /** To the heatsink its maker rates it on. */
    HEATSINK
}
