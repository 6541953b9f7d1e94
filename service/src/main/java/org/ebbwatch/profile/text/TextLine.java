package org.ebbwatch.profile.text;

import java.io.IOException;
import java.util.function.LongSupplier;
import org.ebbwatch.acquire.Port;
import org.ebbwatch.acquire.PortUnavailable;
import org.ebbwatch.profile.DeviceLine;
import org.ebbwatch.profile.ProfiledBoard;

/** Reads a device's lines from a port; nothing is ever written to it. */
final class TextLine implements DeviceLine {
    private static final int READ_BYTES = 4_096;

    private final Port port;
    private final TextScans scans;
    private final LongSupplier nanos;
    private final byte[] bytes = new byte[READ_BYTES];

    /**
     * A closed connection.
     *
     * @param scans outlives the connection
     * @param nanos the host's monotonic clock
     */
    TextLine(Port port, TextScans scans, LongSupplier nanos) {
        this.port = port;
        this.scans = scans;
        this.nanos = nanos;
    }

    @Override
    public void open() throws PortUnavailable {
        port.open();
        scans.opened();
    }

    @Override
    public boolean step(ProfiledBoard board) throws IOException {
        int count = port.read(bytes);
        if (count > 0) {
            scans.accept(bytes, count, nanos.getAsLong(), board);
        }
        return count >= 0;
    }

    @Override
    public void close() {
        port.close();
    }
}
