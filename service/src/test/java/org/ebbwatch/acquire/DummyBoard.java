package org.ebbwatch.acquire;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.concurrent.atomic.AtomicLong;
import org.ebbwatch.rig.message.BoardMessage;
import org.ebbwatch.rig.message.Done;
import org.ebbwatch.rig.message.HostAlive;
import org.ebbwatch.rig.message.HostMessage;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.message.Who;
import org.ebbwatch.rig.wire.FrameDecoder;
import org.ebbwatch.rig.wire.FrameEncoder;
import org.ebbwatch.rig.wire.FrameSink;
import org.ebbwatch.rig.wire.ReadingsView;

/** A board on its own thread: answers every request, and scans two ahead of the last scan acknowledged. */
final class DummyBoard implements FrameSink {

    /** The board's end of a line. */
    interface Wire {
        int read(byte[] into) throws IOException;

        void write(byte[] bytes) throws IOException;
    }

    private final Wire wire;
    private final Identity identity;
    private final long lastScan;
    private final FrameEncoder encoder = new FrameEncoder();
    private final FrameDecoder decoder = new FrameDecoder(this);
    final AtomicLong scan = new AtomicLong();
    private long acknowledged;

    DummyBoard(Wire wire, Identity identity, long lastScan) {
        this.wire = wire;
        this.identity = identity;
        this.lastScan = lastScan;
    }

    /** Runs until the line ends. */
    Thread start() {
        Thread thread = new Thread(this::run, "dummy board");
        thread.setDaemon(true);
        thread.start();
        return thread;
    }

    private void run() {
        byte[] bytes = new byte[4_096];
        try {
            int count = wire.read(bytes);
            while (count > 0) {
                decoder.accept(bytes, 0, count);
                count = wire.read(bytes);
            }
        } catch (IOException | UncheckedIOException e) {
            return; // the line ended, and so does the board
        }
    }

    private void send(BoardMessage message) {
        try {
            wire.write(encoder.encode(message));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void readings(ReadingsView view) {
        throw new AssertionError("a host sends no readings");
    }

    @Override
    public void message(int sequence, Message message) {
        if (message instanceof Who) {
            acknowledged = scan.get();
            send(identity);
        } else if (message instanceof HostAlive alive) {
            acknowledged = Math.max(acknowledged, alive.lastScan());
            while (scan.get() < Math.min(lastScan, acknowledged + 2)) {
                long next = scan.incrementAndGet();
                send(Frames.readings(
                        identity.bootNumber(),
                        1_000 * next,
                        next,
                        0,
                        identity.channels().size()));
            }
        } else {
            send(new Done(sequence, ((HostMessage) message).kind().code()));
        }
    }
}
