package org.ebbwatch.trace;

import java.io.Closeable;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.IdentityHashMap;
import java.util.zip.CRC32C;
import org.ebbwatch.time.LastSeen;

/**
 * Appends scans to a tail. What is appended waits in a buffer until the buffer is full or {@link #force} is called.
 *
 * <p>It writes through {@link RandomAccessFile}, not through a channel, because a channel is closed for good when its thread
 * is interrupted. After an {@link IOException} the end of the file is not to be trusted and the tail must be written anew.
 * Not thread-safe.
 */
final class TailFile implements ScanSink, Closeable {

    private static final int BUFFER_BYTES = 4 * TailFormat.LONGEST_RECORD;

    private final RandomAccessFile file;
    private final IdentityHashMap<BoardBoot, Integer> boots;
    private final ByteBuffer buffer = ByteBuffer.allocate(BUFFER_BYTES).order(ByteOrder.LITTLE_ENDIAN);
    private final CRC32C crc = new CRC32C();
    private long writtenBytes;
    private boolean forced;

    private TailFile(RandomAccessFile file, long writtenBytes, IdentityHashMap<BoardBoot, Integer> boots) {
        this.file = file;
        this.writtenBytes = writtenBytes;
        this.boots = boots;
    }

    /** Begins an empty tail in place of whatever the file held. */
    static TailFile begin(Path path) throws IOException {
        RandomAccessFile file = new RandomAccessFile(path.toFile(), "rw");
        file.setLength(0);
        TailFile tail = new TailFile(file, 0, new IdentityHashMap<>());
        tail.buffer.put(TailFormat.MAGIC);
        return tail;
    }

    /** Goes on at the end of a tail that was read without damage. */
    static TailFile resume(Path path, TailReader read) throws IOException {
        RandomAccessFile file = new RandomAccessFile(path.toFile(), "rw");
        file.seek(file.length());
        return new TailFile(file, file.length(), read.boots());
    }

    @Override
    public void scan(BoardBoot boot, ScanRow row) throws IOException {
        Integer number = boots.get(boot);
        if (number == null) {
            number = boots.size();
            boots.put(boot, number);
            boot(number, boot);
        }
        int channels = row.channels();
        int[] amperes = row.amperes();
        boolean near = areNear(row.volts(), channels)
                && areNear(row.celsius(), channels)
                && (amperes == null || areNear(amperes, channels));
        int start = begin(near ? TailFormat.NEAR_SCAN : TailFormat.SCAN);
        buffer.putInt(number).putLong(row.scan()).putLong(row.eventMillis());
        buffer.put(amperes == null ? 0 : TailFormat.WITH_AMPERES).put((byte) channels);
        buffer.put(row.states(), 0, channels);
        put(row.volts(), channels, near);
        put(row.celsius(), channels, near);
        if (amperes != null) {
            put(amperes, channels, near);
        }
        end(start);
    }

    void seen(String board, LastSeen seen) throws IOException {
        int start = begin(TailFormat.SEEN);
        new SeenRecord(board, seen).write(buffer);
        end(start);
    }

    /** Returns when all that was appended would outlive a power cut. */
    void force() throws IOException {
        drain();
        if (!forced) {
            file.getFD().sync();
            forced = true;
        }
    }

    boolean isForced() {
        return forced && buffer.position() == 0;
    }

    long length() {
        return writtenBytes + buffer.position();
    }

    /** Closes the file without writing what is still in the buffer. */
    @Override
    public void close() throws IOException {
        file.close();
    }

    private void boot(int number, BoardBoot boot) throws IOException {
        byte[] name = boot.board().getBytes(StandardCharsets.UTF_8);
        int start = begin(TailFormat.BOOT);
        buffer.putInt(number).put(boot.kinds().toByte()).putLong(boot.bootNumber());
        buffer.put((byte) name.length).put(name);
        buffer.put(boot.identity().getBytes(StandardCharsets.UTF_8));
        end(start);
    }

    private int begin(byte kind) throws IOException {
        if (buffer.remaining() < TailFormat.LONGEST_RECORD) {
            drain();
        }
        int start = buffer.position();
        buffer.putShort(TailFormat.MARK).putShort((short) 0).putInt(0).put(kind);
        return start;
    }

    private void end(int start) {
        int payload = buffer.position() - start - TailFormat.FRAME_BYTES;
        buffer.putShort(start + 2, (short) payload);
        buffer.putInt(start + 4, TailFormat.crc(crc, buffer.array(), start, payload));
    }

    private void put(int[] column, int channels, boolean near) {
        int least = least(column, channels);
        if (near) {
            buffer.putInt(least);
        }
        for (int channel = 0; channel < channels; channel++) {
            if (near) {
                buffer.putShort((short) (column[channel] - least));
            } else {
                buffer.putInt(column[channel]);
            }
        }
    }

    /** Whether all of a column lie within 16 bits of the least of them. */
    private static boolean areNear(int[] column, int channels) {
        long least = least(column, channels);
        for (int channel = 0; channel < channels; channel++) {
            if (column[channel] - least > 0xFFFF) {
                return false;
            }
        }
        return true;
    }

    private static int least(int[] column, int channels) {
        int least = column[0];
        for (int channel = 1; channel < channels; channel++) {
            least = Math.min(least, column[channel]);
        }
        return least;
    }

    private void drain() throws IOException {
        if (buffer.position() > 0) {
            forced = false;
            file.write(buffer.array(), 0, buffer.position());
            writtenBytes += buffer.position();
            buffer.clear();
        }
    }
}
