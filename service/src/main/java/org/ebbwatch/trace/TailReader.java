package org.ebbwatch.trace;

import java.io.FileInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.CRC32C;
import org.ebbwatch.store.StorageException;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.LastSeen;
import org.ebbwatch.time.WallQuality;
import org.ebbwatch.trace.codec.ValueKinds;

/**
 * Reads a tail from its beginning and hands out every whole scan, in order. Bytes that are no whole record are skipped one by
 * one until the next whole record, and reported; so a torn end costs the torn scan, and a damaged sector costs only the scans
 * in it. A stretch of noise passes for a record once in 2^48 tries.
 */
final class TailReader {

    private final ByteBuffer window =
            ByteBuffer.allocate(4 * TailFormat.LONGEST_RECORD).order(ByteOrder.LITTLE_ENDIAN);
    private final CRC32C crc = new CRC32C();
    private final Map<Integer, BoardBoot> bootByNumber = new HashMap<>();
    private final Map<String, LastSeen> seen = new HashMap<>();
    private final List<TailDamage> damages = new ArrayList<>();
    private final ScanSink sink;
    private long offset;
    private long damagedBytes;
    private boolean ended;

    private final RowBuffer row = new RowBuffer();

    private TailReader(ScanSink sink) {
        this.sink = sink;
    }

    /**
     * Reads the whole tail.
     *
     * @throws StorageException if the file was not written by this version of the tail
     */
    static TailReader read(Path path, ScanSink sink) throws IOException {
        TailReader reader = new TailReader(sink);
        try (InputStream in = new FileInputStream(path.toFile())) {
            reader.window.limit(0);
            reader.readAll(in, path);
        }
        return reader;
    }

    /** The last seen of each board. */
    Map<String, LastSeen> seen() {
        return seen;
    }

    List<TailDamage> damages() {
        return List.copyOf(damages);
    }

    IdentityHashMap<BoardBoot, Integer> boots() {
        IdentityHashMap<BoardBoot, Integer> numbers = new IdentityHashMap<>();
        bootByNumber.forEach((number, boot) -> numbers.put(boot, number));
        return numbers;
    }

    private void readAll(InputStream in, Path path) throws IOException {
        fill(in);
        if (window.remaining() < TailFormat.MAGIC.length) {
            damages.add(new TailDamage(0, window.remaining(), true));
            return;
        }
        byte[] magic = new byte[TailFormat.MAGIC.length];
        window.get(magic);
        offset = magic.length;
        if (!Arrays.equals(magic, TailFormat.MAGIC)) {
            throw new StorageException("not a tail this version can read, move it away to start anew: " + path);
        }
        while (fill(in)) {
            int bytes = takeRecord();
            if (bytes == 0) {
                damagedBytes++;
                bytes = 1;
            } else {
                endDamage(false);
            }
            window.position(window.position() + bytes);
            offset += bytes;
        }
        endDamage(true);
    }

    private void endDamage(boolean atEnd) {
        if (damagedBytes > 0) {
            damages.add(new TailDamage(offset - damagedBytes, damagedBytes, atEnd));
            damagedBytes = 0;
        }
    }

    /** Makes sure that a whole record is in the window if the file has one; false at the end of the file. */
    private boolean fill(InputStream in) throws IOException {
        if (window.remaining() < TailFormat.LONGEST_RECORD && !ended) {
            window.compact();
            int read = 0;
            while (window.hasRemaining() && read >= 0) {
                read = in.read(window.array(), window.position(), window.remaining());
                window.position(window.position() + Math.max(read, 0));
            }
            ended = read < 0;
            window.flip();
        }
        return window.hasRemaining();
    }

    /** Takes the record at the window's position, without moving it; returns its length, 0 if there is none. */
    private int takeRecord() throws IOException {
        int start = window.position();
        if (window.remaining() < TailFormat.FRAME_BYTES || window.getShort(start) != TailFormat.MARK) {
            return 0;
        }
        int payload = window.getShort(start + 2) & 0xFFFF;
        if (payload > window.remaining() - TailFormat.FRAME_BYTES
                || window.getInt(start + 4) != TailFormat.crc(crc, window.array(), start, payload)) {
            return 0;
        }
        ByteBuffer record =
                window.slice(start + TailFormat.FRAME_BYTES, payload).order(ByteOrder.LITTLE_ENDIAN);
        try {
            return takePayload(record) ? TailFormat.FRAME_BYTES + payload : 0;
        } catch (BufferUnderflowException | IllegalArgumentException e) {
            return 0;
        }
    }

    private boolean takePayload(ByteBuffer record) throws IOException {
        byte kind = record.get();
        if (kind == TailFormat.SEEN) {
            SeenRecord found = SeenRecord.read(record);
            seen.put(found.board(), found.seen());
            return true;
        }
        int number = record.getInt();
        if (kind == TailFormat.SEEN_FIRST) {
            takeSeen(text(record, number), record);
            return true;
        }
        if (kind == TailFormat.BOOT) {
            ValueKinds kinds = ValueKinds.of(record.get());
            long bootNumber = record.getLong();
            String board = text(record, record.get() & 0xFF);
            bootByNumber.put(number, new BoardBoot(board, bootNumber, kinds, text(record, record.remaining())));
            return true;
        }
        BoardBoot boot = bootByNumber.get(number);
        boolean near = kind == TailFormat.NEAR_SCAN;
        if ((!near && kind != TailFormat.SCAN) || boot == null) {
            return false;
        }
        row.bootNumber = boot.bootNumber();
        row.scan = record.getLong();
        row.eventMillis = record.getLong();
        row.withAmperes = record.get() == TailFormat.WITH_AMPERES;
        row.makeRoomFor(record.get() & 0xFF);
        record.get(row.states, 0, row.channels);
        take(record, row.volts, row.channels, near);
        take(record, row.celsius, row.channels, near);
        if (row.withAmperes) {
            take(record, row.amperes, row.channels, near);
        }
        sink.scan(boot, row);
        return true;
    }

    private void takeSeen(String board, ByteBuffer record) {
        long eventMillis = record.getLong();
        long bootNumber = record.getLong();
        long boardMillis = record.getLong();
        long scan = record.getLong();
        long monotonicNanos = record.getLong();
        long wallMillis = record.getLong();
        WallQuality quality = record.get() == TailFormat.WALL_KNOWN ? WallQuality.KNOWN : WallQuality.UNSYNCHRONISED;
        var host = new HostTime(text(record, record.remaining()), monotonicNanos, wallMillis, quality);
        seen.put(board, new LastSeen(eventMillis, bootNumber, boardMillis, scan, host));
    }

    private static void take(ByteBuffer record, int[] column, int channels, boolean near) {
        int least = near ? record.getInt() : 0;
        for (int channel = 0; channel < channels; channel++) {
            column[channel] = near ? least + (record.getShort() & 0xFFFF) : record.getInt();
        }
    }

    private static String text(ByteBuffer record, int bytes) {
        if (bytes < 0 || bytes > record.remaining()) {
            throw new BufferUnderflowException();
        }
        byte[] text = new byte[bytes];
        record.get(text);
        return new String(text, StandardCharsets.UTF_8);
    }
}
