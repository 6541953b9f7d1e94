package org.ebbwatch.rig.wire;

import java.util.Objects;

/**
 * Consistent overhead byte stuffing: rewrites bytes so that none of them is 0, and 0 can end a frame. The result is at
 * least one byte longer, at most one byte for every 254 begun. Source: Cheshire and Baker, IEEE/ACM Transactions on
 * Networking 7(2), 1999.
 */
public final class Cobs {
    /** What {@link #decode} gives for bytes that nothing encodes to. */
    public static final int NOT_DECODABLE = -1;

    private static final int FULL_BLOCK = 0xFF;

    private Cobs() {}

    /** The most bytes that {@link #encode} makes of so many, without a delimiter. */
    public static int longestEncoded(int length) {
        return length + Math.max(1, (length + FULL_BLOCK - 2) / (FULL_BLOCK - 1));
    }

    /**
     * Encodes {@code length} bytes of {@code from} into {@code into}, which must not overlap; writes no delimiter.
     *
     * @return how many bytes were written
     * @throws IndexOutOfBoundsException if either range does not fit its array; {@code into} needs room for
     *     {@link #longestEncoded}
     */
    public static int encode(byte[] from, int offset, int length, byte[] into, int intoOffset) {
        Objects.checkFromIndexSize(offset, length, from.length);
        Objects.checkFromIndexSize(intoOffset, longestEncoded(length), into.length);
        int codeAt = intoOffset;
        int at = intoOffset + 1;
        int code = 1;
        for (int i = offset; i < offset + length; i++) {
            if (code == FULL_BLOCK) {
                into[codeAt] = (byte) code;
                codeAt = at++;
                code = 1;
            }
            if (from[i] == 0) {
                into[codeAt] = (byte) code;
                codeAt = at++;
                code = 1;
            } else {
                into[at++] = from[i];
                code++;
            }
        }
        into[codeAt] = (byte) code;
        return at - intoOffset;
    }

    /**
     * Decodes {@code length} bytes of {@code from} into {@code into}, which may be the same array at the same offset.
     *
     * @return how many bytes were written, always below {@code length}; {@link #NOT_DECODABLE} if the bytes are empty,
     *     hold a 0 or end within a block
     * @throws IndexOutOfBoundsException if either range does not fit its array; {@code into} needs room for
     *     {@code length - 1}
     */
    public static int decode(byte[] from, int offset, int length, byte[] into, int intoOffset) {
        Objects.checkFromIndexSize(offset, length, from.length);
        Objects.checkFromIndexSize(intoOffset, Math.max(0, length - 1), into.length);
        int end = offset + length;
        int at = intoOffset;
        int i = offset;
        if (i == end) {
            return NOT_DECODABLE;
        }
        while (i < end) {
            int code = from[i++] & 0xFF;
            if (code == 0 || code - 1 > end - i) {
                return NOT_DECODABLE;
            }
            for (int n = 1; n < code; n++) {
                byte next = from[i++];
                if (next == 0) {
                    return NOT_DECODABLE;
                }
                into[at++] = next;
            }
            if (code != FULL_BLOCK && i < end) {
                into[at++] = 0;
            }
        }
        return at - intoOffset;
    }
}
