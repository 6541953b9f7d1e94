package org.ebbwatch.rig.message;

import java.util.Optional;

/** The kinds of message, with the byte that stands for each on the wire: below 0x40 from a board, from 0x41 to it. */
public enum Kind {
    IDENTITY(0x01),
    READINGS(0x02),
    LEAD_CHECKED(0x03),
    DONE(0x04),
    REFUSED(0x05),
    WHO(0x41),
    HOST_ALIVE(0x42),
    SET_LOAD(0x43),
    CHECK_LEAD(0x44),
    BLINK(0x45),
    BUZZER(0x46),
    SET_INTERVAL(0x47),
    OPEN_ALL_LOADS(0x48);

    private static final Kind[] BY_CODE = new Kind[0x80];

    static {
        for (Kind kind : values()) {
            BY_CODE[kind.code] = kind;
        }
    }

    private final int code;

    Kind(int code) {
        this.code = code;
    }

    /** The byte on the wire, 0x01 to 0x7F. */
    public int code() {
        return code;
    }

    /** The kind a byte on the wire stands for, empty where this version of the protocol names none. */
    public static Optional<Kind> of(int code) {
        return code < 0 || code >= BY_CODE.length ? Optional.empty() : Optional.ofNullable(BY_CODE[code]);
    }
}
