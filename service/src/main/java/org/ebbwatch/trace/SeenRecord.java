package org.ebbwatch.trace;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.LastSeen;
import org.ebbwatch.time.WallQuality;

/**
 * Where a board was last seen, in as few bytes as may be: it is written with every forcing to disk. See {@link TailFormat}.
 *
 * @param board its name
 * @param seen where
 */
record SeenRecord(String board, LastSeen seen) {
    private static final int WALL_KNOWN = 1;
    private static final int BOOT_IS_UUID = 2;
    private static final int LOW_BITS = 0x7F;
    private static final int MORE = 0x80;
    private static final int BITS = 7;

    void write(ByteBuffer buffer) {
        byte[] name = board.getBytes(StandardCharsets.UTF_8);
        HostTime host = seen.host();
        boolean uuid = isUuid(host.hostBoot());
        boolean known = host.wallQuality() == WallQuality.KNOWN;
        buffer.put((byte) ((known ? WALL_KNOWN : 0) | (uuid ? BOOT_IS_UUID : 0)));
        put(buffer, name.length);
        buffer.put(name);
        put(buffer, seen.eventMillis());
        put(buffer, seen.bootNumber());
        put(buffer, seen.boardMillis());
        put(buffer, seen.scan());
        put(buffer, host.monotonicNanos());
        put(buffer, host.wallMillis());
        if (uuid) {
            UUID boot = UUID.fromString(host.hostBoot());
            buffer.putLong(boot.getMostSignificantBits()).putLong(boot.getLeastSignificantBits());
        } else {
            buffer.put(host.hostBoot().getBytes(StandardCharsets.UTF_8));
        }
    }

    /** Reads what {@link #write} wrote, to the end of the buffer. */
    static SeenRecord read(ByteBuffer buffer) {
        int flags = buffer.get();
        String board = text(buffer, (int) Math.min(take(buffer), Integer.MAX_VALUE));
        long eventMillis = take(buffer);
        long bootNumber = take(buffer);
        long boardMillis = take(buffer);
        long scan = take(buffer);
        long monotonicNanos = take(buffer);
        long wallMillis = take(buffer);
        String boot = (flags & BOOT_IS_UUID) != 0
                ? new UUID(buffer.getLong(), buffer.getLong()).toString()
                : text(buffer, buffer.remaining());
        var quality = (flags & WALL_KNOWN) != 0 ? WallQuality.KNOWN : WallQuality.UNSYNCHRONISED;
        var host = new HostTime(boot, monotonicNanos, wallMillis, quality);
        return new SeenRecord(board, new LastSeen(eventMillis, bootNumber, boardMillis, scan, host));
    }

    /** In the one way of writing it that {@link UUID#toString} gives back. */
    private static boolean isUuid(String text) {
        return text.matches("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}");
    }

    /** Seven bits a byte, the lowest first; the top bit says that more follow (LEB128, as in DWARF). */
    private static void put(ByteBuffer buffer, long number) {
        long rest = number;
        while ((rest & ~LOW_BITS) != 0) {
            buffer.put((byte) ((rest & LOW_BITS) | MORE));
            rest >>>= BITS;
        }
        buffer.put((byte) rest);
    }

    private static long take(ByteBuffer buffer) {
        long number = 0;
        for (int shift = 0; shift < Long.SIZE; shift += BITS) {
            int next = buffer.get();
            number |= (long) (next & LOW_BITS) << shift;
            if ((next & MORE) == 0) {
                return number;
            }
        }
        throw new IllegalArgumentException("a number of more than 64 bits");
    }

    private static String text(ByteBuffer buffer, int bytes) {
        if (bytes < 0 || bytes > buffer.remaining()) {
            throw new BufferUnderflowException();
        }
        byte[] text = new byte[bytes];
        buffer.get(text);
        return new String(text, StandardCharsets.UTF_8);
    }
}
