package org.ebbwatch.trace;

import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32C;

/**
 * The bytes of a tail, little-endian. After the eight characters {@code EBBTAIL1} come records:
 *
 * <pre>
 * u16  mark 0xEBB1
 * u16  length of the payload
 * u32  CRC-32C over length and payload
 *      payload, its first byte the kind:
 *
 * 1    boot: i32 number in this file, u8 value kinds, i64 boot number, u8 length of the board's name in UTF-8,
 *            the name, the identity in UTF-8
 * 2    scan: i32 number of the boot, i64 scan, i64 event millis, u8 bit 0 amperes follow, u8 channels,
 *            then u8 states of all channels, i32 volts of all, i32 celsius of all, i32 amperes of all where they follow
 * 3    seen, as it was written first: i32 length of the board's name in UTF-8, the name, i64 event millis, i64 boot number,
 *            i64 board millis, i64 scan, i64 host monotonic nanos, i64 host wall millis, u8 bit 0 wall known, the host's
 *            boot in UTF-8
 * 4    seen: u8 bit 0 wall known, bit 1 the host's boot is a UUID; then as LEB128 numbers: length of the board's name in UTF-8,
 *            the name, event millis, boot number, board millis, scan, host monotonic nanos, host wall millis; then the
 *            host's boot in UTF-8 or as 16 bytes
 * 5    scan whose volts lie near each other, and celsius, and amperes: as 2, but in place of the i32 of all channels stands the
 *            i32 of the least of them, then for each a u16 above it
 * </pre>
 *
 * A scan of 16 channels without amperes takes 175 bytes, a near one 119. A boot stands before its first scan. The last seen of a board
 * counts; it comes before each forcing to disk and may lag behind the scans.
 */
final class TailFormat {

    static final byte[] MAGIC = "EBBTAIL1".getBytes(StandardCharsets.US_ASCII);
    static final short MARK = (short) 0xEBB1;
    static final int FRAME_BYTES = 8;
    static final int LONGEST_RECORD = FRAME_BYTES + 0xFFFF;
    static final byte BOOT = 1;
    static final byte SCAN = 2;
    static final byte SEEN_FIRST = 3;
    static final byte SEEN = 4;
    static final byte NEAR_SCAN = 5;
    static final byte WITH_AMPERES = 1;
    static final byte WALL_KNOWN = 1;

    private TailFormat() {}

    /** Checksum of the record that begins here. */
    static int crc(CRC32C crc, byte[] bytes, int start, int payload) {
        crc.reset();
        crc.update(bytes, start + 2, 2);
        crc.update(bytes, start + FRAME_BYTES, payload);
        return (int) crc.getValue();
    }
}
