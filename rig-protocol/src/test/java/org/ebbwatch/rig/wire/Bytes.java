package org.ebbwatch.rig.wire;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.HexFormat;

/** Byte arrays of tests, written as hexadecimal. */
final class Bytes {
    private static final HexFormat SPACED = HexFormat.ofDelimiter(" ").withUpperCase();

    private Bytes() {}

    /** Bytes of spaced hexadecimal; {@code ..} between two bytes stands for all between them, one up each. */
    static byte[] hex(String text) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        int last = -1;
        boolean run = false;
        for (String word : text.strip().split(" +", -1)) {
            if (word.equals("..")) {
                run = true;
            } else if (!word.isEmpty()) {
                int next = Integer.parseInt(word, 16);
                for (int between = last + 1; run && between < next; between++) {
                    bytes.write(between);
                }
                bytes.write(next);
                last = next;
                run = false;
            }
        }
        return bytes.toByteArray();
    }

    static String spaced(byte[] bytes) {
        return SPACED.formatHex(bytes);
    }

    static byte[] join(byte[]... parts) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        for (byte[] part : parts) {
            bytes.writeBytes(part);
        }
        return bytes.toByteArray();
    }

    /** Any bytes as a frame of the wire: checksum, COBS and delimiter added, whatever they say. */
    static byte[] framed(byte[] headerAndPayload) {
        int crc = BitwiseCrc32c.of(headerAndPayload);
        byte[] frame = new byte[headerAndPayload.length + 4];
        System.arraycopy(headerAndPayload, 0, frame, 0, headerAndPayload.length);
        LittleEndian.put32(frame, headerAndPayload.length, crc);
        byte[] wire = new byte[Cobs.longestEncoded(frame.length) + 1];
        int length = Cobs.encode(frame, 0, frame.length, wire, 0);
        return Arrays.copyOf(wire, length + 1);
    }
}
