package org.ebbwatch.profile;

import java.util.function.Supplier;
import org.ebbwatch.acquire.Port;
import org.ebbwatch.acquire.PortAddress;

/** How a device is read that does not speak the rig protocol. */
public interface BoardProfile {
    /** What it is. */
    Description description();

    /**
     * Where a board of this profile is reached.
     *
     * @param serialNumber by which the board is known, in place of the profile's
     * @return gives a new, closed port for each attempt to connect, all of the same board
     */
    Supplier<Port> ports(PortAddress address, String serialNumber);
}
