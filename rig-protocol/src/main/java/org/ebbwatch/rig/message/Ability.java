package org.ebbwatch.rig.message;

/** What a board can do on one channel; each has its bit in the abilities byte of IDENTITY. */
public enum Ability {
    /** Measures volts. */
    VOLTS(0),
    /** Measures degrees Celsius. */
    CELSIUS(1),
    /** Measures amperes. */
    AMPERES(2),
    /** Connects and disconnects the load by a switch. */
    LOAD_SWITCH(3),
    /** Proves that a cell is attached by a weak pull on the lead. */
    LEAD_CHECK(4),
    /** Blinks a lamp at the channel. */
    BLINK(5);

    private final int mask;

    Ability(int bit) {
        this.mask = 1 << bit;
    }

    /** The one bit that stands for this ability, 1 to 32. */
    public int mask() {
        return mask;
    }
}
