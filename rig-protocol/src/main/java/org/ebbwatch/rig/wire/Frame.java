package org.ebbwatch.rig.wire;

/** The measures of a frame, in bytes. */
final class Frame {
    static final int VERSION = 1;
    static final byte DELIMITER = 0;
    static final int HEADER = 4;
    static final int CHECKSUM = 4;
    static final int PAYLOAD_MOST = 1024;
    static final int SHORTEST = HEADER + CHECKSUM;
    static final int LONGEST = HEADER + PAYLOAD_MOST + CHECKSUM;
    static final int LONGEST_ENCODED = Cobs.longestEncoded(LONGEST);

    private Frame() {}
}
