package org.ebbwatch.profile.modbus;

import com.digitalpetri.modbus.Crc16;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Optional;

/**
 * Modbus over a serial line: unit, function and data, then CRC-16 with its low byte first. An answer has no number that ties it to
 * its request, so it must begin right after it, come from the unit asked, and have exactly the length asked for; anything before,
 * between or behind makes all of it garbled. Source: Modbus over Serial Line V1.02, 2.5.
 */
final class RtuWire implements Wire {
    private static final int LONGEST = 256;
    private static final int CRC_BYTES = 2;
    private static final int FAST_BAUD = 19_200;
    private static final long FAST_PAUSE_NANOS = 1_750_000;
    private static final double PAUSE_BITS = 3.5 * 11;

    private final byte[] held = new byte[LONGEST];
    private int length;
    private Request request;

    /** How long the line must rest before a request: 3.5 characters, or 1.75 ms above 19200 bits per second. */
    static long pauseNanos(int baud) {
        return baud > FAST_BAUD ? FAST_PAUSE_NANOS : (long) (PAUSE_BITS * 1e9 / baud);
    }

    @Override
    public byte[] begin(Request next) {
        request = next;
        length = 0;
        byte[] frame = new byte[1 + next.pdu().length + CRC_BYTES];
        frame[0] = (byte) next.unitId();
        System.arraycopy(next.pdu(), 0, frame, 1, next.pdu().length);
        int crc = crc(frame, frame.length - CRC_BYTES);
        frame[frame.length - 2] = (byte) crc;
        frame[frame.length - 1] = (byte) (crc >> 8);
        return frame;
    }

    @Override
    public Optional<Answer> accept(byte[] bytes, int count) {
        if (length + count > LONGEST) {
            return garbled("more bytes than an answer has");
        }
        System.arraycopy(bytes, 0, held, length, count);
        length += count;
        if (length > 0 && held[0] != (byte) request.unitId()) {
            return garbled("an answer of unit " + (held[0] & 0xFF));
        }
        if (length < 2) {
            return Optional.empty();
        }
        if (!request.isAnsweredBy(held[1])) {
            return garbled("an answer to function " + (held[1] & 0x7F));
        }
        int whole = 1 + request.answerBytes(held[1]) + CRC_BYTES;
        if (length < whole) {
            return Optional.empty();
        }
        if (length > whole) {
            return garbled("more bytes than were asked for");
        }
        int crc = ((held[whole - 1] & 0xFF) << 8) | (held[whole - 2] & 0xFF);
        return crc == crc(held, whole - CRC_BYTES)
                ? Optional.of(request.answer(Arrays.copyOfRange(held, 1, whole - CRC_BYTES)))
                : garbled("a wrong checksum");
    }

    @Override
    public boolean needsQuiet() {
        return true;
    }

    private static Optional<Answer> garbled(String why) {
        return Optional.of(new Answer.Garbled(why));
    }

    private static int crc(byte[] bytes, int count) {
        Crc16 crc = new Crc16();
        crc.update(ByteBuffer.wrap(bytes, 0, count));
        return crc.getValue();
    }
}
