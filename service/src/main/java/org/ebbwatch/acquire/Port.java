package org.ebbwatch.acquire;

import java.io.IOException;

/**
 * One way to a board's bytes. {@link #read} is called by one thread and {@link #write} by another; {@link #close} by any. A
 * port object is opened once; each attempt takes a new one.
 */
public interface Port {

    /**
     * Opens the port, looking its address up now.
     *
     * @throws PortUnavailable with a message that tells a person why and what to do
     */
    void open() throws PortUnavailable;

    /**
     * Waits about 100 ms at most for bytes.
     *
     * @return how many bytes were read, 0 if none came in time, negative if the port is lost
     * @throws IOException if the port is lost
     */
    int read(byte[] into) throws IOException;

    /**
     * Writes all the bytes. May block for as long as the other end takes none; only {@link #close} frees it then.
     *
     * @throws IOException if the port is lost
     */
    void write(byte[] bytes, int offset, int length) throws IOException;

    /** What a person should know about what is behind the port now, in one sentence; empty: nothing. */
    default String remark() {
        return "";
    }

    /** Closes the port and frees whoever waits in it; does nothing on a closed port. */
    void close();
}
