package org.ebbwatch.sim.link;

import java.io.Closeable;
import java.io.IOException;

/** The board's end of a line to a host. For one thread, except {@link #close}. */
public interface SimPort extends Closeable {
    /** What a host opens: a device path, or host and port. */
    String address();

    /**
     * Reads what has come, waiting at most so long for the first byte.
     *
     * @return how many bytes, 0 when none came
     */
    int read(byte[] into, int waitMillis) throws IOException;

    /**
     * Writes what the line takes at once, without waiting.
     *
     * @return how many bytes, 0 when nobody fetches what was written before
     */
    int write(byte[] from, int offset, int length) throws IOException;

    @Override
    void close() throws IOException;
}
