package org.ebbwatch.profile.modbus;

import java.io.IOException;
import java.io.UncheckedIOException;
import org.ebbwatch.sim.link.PtyPort;

/** Two pseudo-terminals, each of which hears what is written to the other: a serial line. Linux only. */
public final class TwistedPair implements AutoCloseable {
    private static final int LOOK_MILLIS = 2;

    private final PtyPort one = PtyPort.open();
    private final PtyPort other = PtyPort.open();
    private final Thread wire = new Thread(this::carry, "twisted pair");
    private volatile boolean cut;

    public TwistedPair() throws IOException {
        wire.setDaemon(true);
        wire.start();
    }

    /** Where the service opens the line. */
    public String hostEnd() {
        return one.address();
    }

    /** Where the devices open it. */
    public String deviceEnd() {
        return other.address();
    }

    private void carry() {
        byte[] bytes = new byte[512];
        try {
            while (!cut) {
                pass(one, other, bytes);
                pass(other, one, bytes);
            }
        } catch (IOException e) {
            if (!cut) {
                throw new UncheckedIOException(e);
            }
        }
    }

    private static void pass(PtyPort from, PtyPort to, byte[] bytes) throws IOException {
        int count = from.read(bytes, LOOK_MILLIS);
        int written = 0;
        while (written < count) {
            written += to.write(bytes, written, count - written);
        }
    }

    @Override
    public void close() throws IOException {
        cut = true;
        try {
            wire.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        one.close();
        other.close();
    }
}
