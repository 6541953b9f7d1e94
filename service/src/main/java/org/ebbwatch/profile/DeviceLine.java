package org.ebbwatch.profile;

import java.io.IOException;
import org.ebbwatch.acquire.PortUnavailable;

/** One connection to a device that is read in its own protocol. Opened once; {@link #close} may be called by any thread. */
public interface DeviceLine {

    /**
     * Opens the connection.
     *
     * @throws PortUnavailable with a message that tells a person why and what to do
     */
    void open() throws PortUnavailable;

    /**
     * Takes one step: waits for about 100 ms, or for one answer of the device, and tells the board what came of it.
     *
     * @return false if the connection is lost
     * @throws IOException if it is lost, with a message that tells why
     */
    boolean step(ProfiledBoard board) throws IOException;

    /** Leaves the device safe, its loads open, and lets go of it; does nothing on a closed connection. */
    void close();
}
