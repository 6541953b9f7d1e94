package org.ebbwatch.rough;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import org.ebbwatch.sim.link.SimPort;

/** A board's line to the host that notes every frame as it leaves the board, and then harms it. */
final class RoughWire implements SimPort {
    private static final int MOST_WAITING = 1 << 16;

    private final SimPort inner;
    private final SentScans sent;
    private final ByteArrayOutputStream frame = new ByteArrayOutputStream();
    private final Deque<byte[]> waiting = new ArrayDeque<>();
    private volatile Harm harm;
    private int waitingBytes;
    private int headTaken;

    RoughWire(SimPort inner, Harm harm, SentScans sent) {
        this.inner = inner;
        this.harm = harm;
        this.sent = sent;
    }

    /** From the next frame on. */
    void harm(Harm next) {
        harm = next;
    }

    @Override
    public String address() {
        return inner.address();
    }

    @Override
    public int read(byte[] into, int waitMillis) throws IOException {
        drain();
        return inner.read(into, waitMillis);
    }

    @Override
    public int write(byte[] from, int offset, int length) throws IOException {
        drain();
        if (waitingBytes > MOST_WAITING) {
            return 0;
        }
        for (int i = offset; i < offset + length; i++) {
            frame.write(from[i]);
            if (from[i] == 0) {
                pass(frame.toByteArray());
                frame.reset();
            }
        }
        drain();
        return length;
    }

    private void pass(byte[] whole) {
        sent.sent(whole);
        for (byte[] piece : harm.of(whole)) {
            if (piece.length > 0) {
                waiting.add(piece);
                waitingBytes += piece.length;
            }
        }
    }

    private void drain() throws IOException {
        while (!waiting.isEmpty()) {
            byte[] head = waiting.peek();
            int taken = inner.write(head, headTaken, head.length - headTaken);
            headTaken += taken;
            waitingBytes -= taken;
            if (headTaken < head.length) {
                return;
            }
            waiting.remove();
            headTaken = 0;
        }
    }

    @Override
    public void close() throws IOException {
        inner.close();
    }
}
