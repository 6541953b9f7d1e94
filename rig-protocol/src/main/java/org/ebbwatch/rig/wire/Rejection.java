package org.ebbwatch.rig.wire;

/** Why a decoder dropped the bytes between two delimiters instead of handing on a message. */
public sealed interface Rejection {
    /** The bytes are not COBS. */
    record BadCobs() implements Rejection {}

    /** Decoded, the bytes are fewer than header and checksum. */
    record TooShort() implements Rejection {}

    /** The bytes went on past the longest frame; they were not kept. */
    record TooLong() implements Rejection {}

    /** The checksum does not fit. */
    record BadCrc() implements Rejection {}

    /** The frame began and its end did not come within the caller's deadline. */
    record CutShort() implements Rejection {}

    /**
     * An intact frame of another version of the protocol.
     *
     * @param version the version it states, 0 to 255
     */
    record UnknownVersion(int version) implements Rejection {}

    /**
     * An intact frame whose payload is shorter than its kind demands, or holds a number its kind does not allow.
     *
     * @param sequence of the frame, u16
     * @param kind byte of the frame
     * @param why what was wrong, for a log
     */
    record Malformed(int sequence, int kind, String why) implements Rejection {}
}
