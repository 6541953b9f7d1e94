package org.ebbwatch.sim.rack;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.zip.CRC32C;
import org.ebbwatch.rig.message.Kind;
import org.ebbwatch.rig.wire.Cobs;

/**
 * Lays out a READINGS frame in buffers that are used again: a demo sends half a million of them, and the general encoder makes
 * a record and four arrays for each. A test holds its bytes against the general encoder's.
 */
final class ReadingsFrame {
    private static final int HEADER = 4;
    private static final int FIXED = 16;
    private static final int CHANNEL_MOST = 13;
    private static final int CHECKSUM = 4;
    private static final byte VERSION = 1;
    private static final byte DELIMITER = 0;

    private final boolean withAmperes;
    private final byte[] frame;
    private final ByteBuffer fields;
    private final byte[] encoded;
    private final CRC32C crc = new CRC32C();
    private int at;
    private int encodedLength;

    ReadingsFrame(int channels, boolean withAmperes) {
        this.withAmperes = withAmperes;
        frame = new byte[HEADER + FIXED + channels * CHANNEL_MOST + CHECKSUM];
        fields = ByteBuffer.wrap(frame).order(ByteOrder.LITTLE_ENDIAN);
        encoded = new byte[Cobs.longestEncoded(frame.length) + 1];
        frame[0] = VERSION;
        frame[1] = (byte) Kind.READINGS.code();
        frame[HEADER + 13] = (byte) (withAmperes ? 1 : 0);
        frame[HEADER + 14] = 0;
        frame[HEADER + 15] = (byte) channels;
    }

    void begin(int sequence, long bootNumber, long boardMillis, long scan, int contacts) {
        fields.putShort(2, (short) sequence);
        fields.putInt(HEADER, (int) bootNumber);
        fields.putInt(HEADER + 4, (int) boardMillis);
        fields.putInt(HEADER + 8, (int) scan);
        frame[HEADER + 12] = (byte) contacts;
        at = HEADER + FIXED;
    }

    void channel(int state, int volts, int celsius, int amperes) {
        frame[at] = (byte) state;
        fields.putInt(at + 1, volts);
        fields.putInt(at + 5, celsius);
        at += 9;
        if (withAmperes) {
            fields.putInt(at, amperes);
            at += 4;
        }
    }

    void end() {
        crc.reset();
        crc.update(frame, 0, at);
        fields.putInt(at, (int) crc.getValue());
        encodedLength = Cobs.encode(frame, 0, at + CHECKSUM, encoded, 0);
        encoded[encodedLength++] = DELIMITER;
    }

    byte[] bytes() {
        return encoded;
    }

    int length() {
        return encodedLength;
    }
}
