package org.ebbwatch.evidence.container;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;

/**
 * What the container says of one part, and the only bytes it may say it in. Layout: local file header and central directory
 * header of the ZIP format (APPNOTE 6.3, sections 4.3.7 and 4.3.12), deflated, without flags, extra fields, comments or
 * attributes, dated 1980-01-01.
 *
 * @param name see {@link Part#path}
 * @param crc CRC-32 of the unpacked bytes
 * @param packedBytes length as it lies in the container
 * @param bytes length unpacked
 * @param offset where its local header begins
 */
record PartHeader(String name, int crc, long packedBytes, long bytes, long offset) {
    static final int LOCAL_BYTES = 30;
    static final int CENTRAL_BYTES = 46;
    static final int END_BYTES = 22;
    static final int LOCAL_MARK = 0x04034B50;
    static final int END_MARK = 0x06054B50;
    static final int PARTS_MOST = 16;

    /** Parts and container stay below 4 GiB, where the format would need other headers. */
    static final long MOST_BYTES = 0xFFFF_FFFEL;

    static final int NAME_MOST = 64;

    private static final int CENTRAL_MARK = 0x02014B50;
    private static final short VERSION = 20;
    private static final short DEFLATED = 8;
    private static final short FIRST_OF_1980 = 0x0021;
    private static final Pattern NAME = Pattern.compile("[a-z0-9][a-z0-9.-]{0," + (NAME_MOST - 1) + "}");

    static boolean isName(String name) {
        return NAME.matcher(name).matches();
    }

    byte[] local() {
        byte[] bytes = new byte[LOCAL_BYTES + name.length()];
        ByteBuffer header = littleEndian(bytes).putInt(LOCAL_MARK);
        common(header).putShort((short) 0).put(ascii(name));
        return bytes;
    }

    byte[] central() {
        byte[] bytes = new byte[CENTRAL_BYTES + name.length()];
        ByteBuffer header = littleEndian(bytes).putInt(CENTRAL_MARK).putShort(VERSION);
        common(header)
                .putShort((short) 0)
                .putShort((short) 0)
                .putShort((short) 0)
                .putShort((short) 0)
                .putInt(0)
                .putInt((int) offset)
                .put(ascii(name));
        return bytes;
    }

    /** Reads a central header; the caller compares {@link #central} with what it gave. */
    static PartHeader read(ByteBuffer header, String name) {
        return new PartHeader(
                name,
                header.getInt(16),
                Integer.toUnsignedLong(header.getInt(20)),
                Integer.toUnsignedLong(header.getInt(24)),
                Integer.toUnsignedLong(header.getInt(42)));
    }

    /** Where the next part's header begins. */
    long end() {
        return offset + LOCAL_BYTES + name.length() + packedBytes;
    }

    /** The end of central directory record (4.3.16), before its comment. */
    static byte[] end(int parts, long directoryBytes, long directoryOffset, int commentBytes) {
        byte[] bytes = new byte[END_BYTES];
        littleEndian(bytes)
                .putInt(END_MARK)
                .putInt(0)
                .putShort((short) parts)
                .putShort((short) parts)
                .putInt((int) directoryBytes)
                .putInt((int) directoryOffset)
                .putShort((short) commentBytes);
        return bytes;
    }

    private ByteBuffer common(ByteBuffer header) {
        return header.putShort(VERSION)
                .putShort((short) 0)
                .putShort(DEFLATED)
                .putShort((short) 0)
                .putShort(FIRST_OF_1980)
                .putInt(crc)
                .putInt((int) packedBytes)
                .putInt((int) bytes)
                .putShort((short) name.length());
    }

    static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    static ByteBuffer littleEndian(byte[] bytes) {
        return ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }
}
