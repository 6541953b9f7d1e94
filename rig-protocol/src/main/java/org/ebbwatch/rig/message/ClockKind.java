package org.ebbwatch.rig.message;

/** What drives a board's own clock, from no clock at all to one held to a reference. */
public enum ClockKind {
    /** The board has no clock: its millis are always 0 and the host stamps its scans. */
    NONE(0),
    /** A crystal, off by tens of parts per million. */
    CRYSTAL(1),
    /** A ceramic resonator or an RC oscillator, off by up to some per cent. */
    RESONATOR(2),
    /** Held to an outside reference. */
    DISCIPLINED(3);

    private final int code;

    ClockKind(int code) {
        this.code = code;
    }

    /** The byte on the wire, 0 to 3. */
    public int code() {
        return code;
    }
}
