package org.ebbwatch.judge;

/** Where a passage is on its way from check-in to release. */
public enum Phase {
    /** Open-circuit voltage, polarity and temperature are being measured; no load yet. */
    CHECK_IN,
    /** On its load until the voltage under load has stayed below the drain limit for the hold time. */
    DRAIN,
    /** Load off; the voltage that comes back decides. */
    REST,
    /** Leads bonded and watched for warmth; later parted and measured once more. */
    TIE_OFF,
    /** Handed over as emptied. */
    RELEASED,
    /** Stopped: a person must decide. No load closes by itself. */
    HELD,
    /** Taken out without a verdict of emptiness. */
    WITHDRAWN;

    /** Whether the passage is over and takes no further entries. */
    public boolean isOver() {
        return this == RELEASED || this == WITHDRAWN;
    }
}
