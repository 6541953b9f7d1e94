package org.ebbwatch.rig.wire;

import java.util.Arrays;
import java.util.zip.CRC32C;
import org.ebbwatch.rig.message.Message;

/** Makes frames of one sender's messages and numbers them. For one thread. */
public final class FrameEncoder {
    private int lastSequence = 0xFFFF;

    /** The message's frame with the next sequence, COBS-encoded and ended by its delimiter. The first sequence is 0. */
    public byte[] encode(Message message) {
        lastSequence = (lastSequence + 1) & 0xFFFF;
        return encode(message, lastSequence);
    }

    /** Sequence of the frame made last, u16; 65535 before the first. */
    public int lastSequence() {
        return lastSequence;
    }

    /** The message's frame with a given sequence, u16. */
    public static byte[] encode(Message message, int sequence) {
        byte[] frame = new byte[Frame.LONGEST];
        frame[0] = Frame.VERSION;
        frame[1] = (byte) message.kind().code();
        LittleEndian.put16(frame, 2, sequence);
        int length = Frame.HEADER + PayloadWriter.write(message, frame, Frame.HEADER);
        CRC32C crc = new CRC32C();
        crc.update(frame, 0, length);
        LittleEndian.put32(frame, length, (int) crc.getValue());
        length += Frame.CHECKSUM;
        byte[] encoded = new byte[Cobs.longestEncoded(length) + 1];
        int encodedLength = Cobs.encode(frame, 0, length, encoded, 0);
        encoded[encodedLength] = Frame.DELIMITER;
        return Arrays.copyOf(encoded, encodedLength + 1);
    }
}
