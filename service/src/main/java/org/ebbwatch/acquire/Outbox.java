package org.ebbwatch.acquire;

import java.io.IOException;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.TimeUnit;

/**
 * The frames on their way to one open port: a bounded queue between the rack's lock, under which nothing may block, and the
 * port, which may. Frames that wait together are written together.
 */
final class Outbox {

    private static final int FRAMES_MOST = 256;
    private static final int BYTES_AT_ONCE = 4_096;
    private static final long WAIT_MILLIS = 100;
    private static final long STALLED_NANOS = 2_000_000_000L;
    private static final long NOT_WRITING = 0;

    private final ArrayBlockingQueue<byte[]> frames = new ArrayBlockingQueue<>(FRAMES_MOST);
    private final byte[] together = new byte[BYTES_AT_ONCE];
    private volatile long writingSinceNanos = NOT_WRITING;
    private volatile boolean overflowed;

    /** Puts a frame in the queue without waiting. A full queue means a port that takes nothing. */
    void put(byte[] frame) {
        if (!frames.offer(frame)) {
            overflowed = true;
        }
    }

    /** True when the port has taken nothing for 2 s and must be closed. */
    boolean stalled(long nanos) {
        long since = writingSinceNanos;
        return overflowed || (since != NOT_WRITING && nanos - since > STALLED_NANOS);
    }

    /** Waits up to 100 ms for frames and writes all there are. */
    void write(Port port) throws IOException, InterruptedException {
        byte[] frame = frames.poll(WAIT_MILLIS, TimeUnit.MILLISECONDS);
        while (frame != null) {
            int length = 0;
            do {
                System.arraycopy(frame, 0, together, length, frame.length);
                length += frame.length;
                frame = frames.poll();
            } while (frame != null && length + frame.length <= BYTES_AT_ONCE);
            writingSinceNanos = System.nanoTime() | 1;
            port.write(together, 0, length);
            writingSinceNanos = NOT_WRITING;
        }
    }
}
