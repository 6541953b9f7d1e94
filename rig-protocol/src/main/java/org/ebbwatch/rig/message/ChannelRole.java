package org.ebbwatch.rig.message;

/** What a channel of a board is wired to. */
public enum ChannelRole {
    /** A cell on the rack. */
    CELL(0),
    /** The air around the rack. */
    AMBIENT(1),
    /** The dummy cell in the watch container. */
    DUMMY(2),
    /** A thermistor in the watch container. */
    WATCH(3),
    /** A bank of load resistors, watched for its own heat. */
    BANK(4);

    private final int code;

    ChannelRole(int code) {
        this.code = code;
    }

    /** The byte on the wire, 0 to 4. */
    public int code() {
        return code;
    }
}
