package org.ebbwatch.acquire;

import java.io.IOException;
import org.ebbwatch.sim.link.PtyPort;

/** A pseudo-terminal on which a test plays the board; the service opens {@link #path} as a serial port. Linux only. */
final class PseudoTerminal implements AutoCloseable {

    private static final int LOOK_MILLIS = 10;

    private final PtyPort port;

    PseudoTerminal() throws IOException {
        port = PtyPort.open();
    }

    String path() {
        return port.address();
    }

    /** Waits for bytes from the service; fails once the plug is pulled. */
    int read(byte[] into) throws IOException {
        int count = 0;
        while (count == 0) {
            count = port.read(into, LOOK_MILLIS);
        }
        return count;
    }

    void write(byte[] bytes) throws IOException {
        int written = 0;
        while (written < bytes.length) {
            written += port.write(bytes, written, bytes.length - written);
        }
    }

    /** Pulls the plug: the service's end hangs up. */
    void hangUp() throws IOException {
        port.close();
    }

    @Override
    public void close() throws IOException {
        hangUp();
    }
}
