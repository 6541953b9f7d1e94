package org.ebbwatch.trace.codec;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.CRC32C;

/**
 * Segments to bytes and back, without loss for every value of every field.
 *
 * <p>Layout, little-endian:
 *
 * <pre>
 * byte 0   codec version, 1
 * byte 1   value kinds
 * u8       channel
 * u8       length of the board's name in UTF-8, then that many bytes
 * i64      boot number
 * i64      first scan
 * i64      event millis of the first scan
 * u16      samples
 * 32 bytes SHA-256 of the board's identity
 * 32 bytes SHA-256 of the previous segment of this board and channel
 * ...      scan numbers, event times, states, volts, celsius, amperes: one arithmetic code, see {@link ColumnCoder}
 * u32      CRC-32C of all bytes before it
 * </pre>
 *
 * The CRC finds any single flipped bit and any burst of up to 32; the hash of a segment in the next one finds the rest.
 * With noise of one count a pair of volts and degrees takes about 0.65 bytes, and the head 0.2 more in a segment of 600
 * samples; see {@code docs/benchmarks/trace.md}. Encoding or decoding a pair takes about 0.1 µs.
 */
public final class SegmentCodec {

    public static final byte VERSION = 1;

    private static final int CRC_BYTES = 4;
    private static final int LONGEST_HEAD = 4 + 4 * SegmentKey.LONGEST_BOARD_NAME + 3 * 8 + 2 + 2 * Sha256.BYTES;

    private SegmentCodec() {}

    /**
     * Writes one segment; the samples are left as they are.
     *
     * @throws IllegalArgumentException if the key does not name the first sample
     */
    public static byte[] encode(SegmentKey key, Sha256 identity, Sha256 previous, Samples samples) {
        if (key.firstScan() != samples.scans()[0] || key.firstEventMillis() != samples.eventMillis()[0]) {
            throw new IllegalArgumentException("the first sample is not the one of " + key);
        }
        BitEncoder coder = new BitEncoder();
        walk(coder, samples);
        byte[] columns = coder.finish();

        byte[] name = key.board().getBytes(StandardCharsets.UTF_8);
        ByteBuffer bytes = ByteBuffer.allocate(LONGEST_HEAD + columns.length)
                .order(ByteOrder.LITTLE_ENDIAN)
                .put(VERSION)
                .put(samples.kinds().toByte())
                .put((byte) key.channel())
                .put((byte) name.length)
                .put(name)
                .putLong(key.bootNumber())
                .putLong(key.firstScan())
                .putLong(key.firstEventMillis())
                .putShort((short) samples.count())
                .put(identity.toBytes())
                .put(previous.toBytes())
                .put(columns);
        return seal(Arrays.copyOf(bytes.array(), bytes.position() + CRC_BYTES));
    }

    /** Writes the checksum of all bytes before it into the last four. */
    static byte[] seal(byte[] bytes) {
        int end = bytes.length - CRC_BYTES;
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).putInt(end, crc(bytes, end));
        return bytes;
    }

    /**
     * Reads one segment.
     *
     * @throws DamagedSegmentException if the bytes are not exactly what {@link #encode} made
     */
    public static Segment decode(byte[] bytes) {
        int end = bytes.length - CRC_BYTES;
        ByteBuffer head = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        if (end < 1 || head.getInt(end) != crc(bytes, end)) {
            throw new DamagedSegmentException("the checksum of a segment of " + bytes.length + " bytes does not fit");
        }
        byte version = head.get();
        if (version != VERSION) {
            throw new DamagedSegmentException("written by codec version " + version + ", this is version " + VERSION);
        }
        try {
            ValueKinds kinds = ValueKinds.of(head.get());
            int channel = head.get() & 0xFF;
            byte[] name = new byte[head.get() & 0xFF];
            head.get(name);
            SegmentKey key = new SegmentKey(
                    new String(name, StandardCharsets.UTF_8), channel, head.getLong(), head.getLong(), head.getLong());
            Samples samples = Samples.unfilled(kinds, head.getShort() & 0xFFFF);
            samples.scans()[0] = key.firstScan();
            samples.eventMillis()[0] = key.firstEventMillis();
            Segment segment = new Segment(key, digest(head), digest(head), samples);
            BitDecoder coder = new BitDecoder(bytes, head.position(), end);
            walk(coder, samples);
            if (!coder.readExactly()) {
                throw new DamagedSegmentException("the samples of " + key + " do not end where the segment does");
            }
            return segment;
        } catch (BufferUnderflowException | IllegalArgumentException e) {
            throw new DamagedSegmentException("the head of a segment makes no sense: " + e.getMessage(), e);
        }
    }

    private static void walk(BitCoder coder, Samples samples) {
        ColumnCoder columns = new ColumnCoder(coder);
        ValueKinds kinds = samples.kinds();
        int count = samples.count();
        columns.steps(samples.scans(), count);
        columns.steps(samples.eventMillis(), count);
        columns.states(samples.states(), count);
        columns.readings(samples.volts(), count, kinds.volts() == ValueKind.FLOAT32);
        columns.readings(samples.celsius(), count, kinds.celsius() == ValueKind.FLOAT32);
        if (kinds.hasAmperes()) {
            columns.readings(samples.amperes(), count, kinds.amperes() == ValueKind.FLOAT32);
        }
    }

    private static Sha256 digest(ByteBuffer head) {
        byte[] digest = new byte[Sha256.BYTES];
        head.get(digest);
        return Sha256.wrap(digest);
    }

    private static int crc(byte[] bytes, int count) {
        CRC32C crc = new CRC32C();
        crc.update(bytes, 0, count);
        return (int) crc.getValue();
    }
}
