package org.ebbwatch.profile;

import java.util.Optional;
import java.util.function.Supplier;
import org.ebbwatch.acquire.Port;
import org.ebbwatch.acquire.PortAddress;

/** How a device is read that does not speak the rig protocol. */
public interface BoardProfile {
    /** By which serial number its boards are known where the rack file gives none: 1 to 32 characters of printable ASCII. */
    Optional<String> serialNumber();

    /**
     * Where a board of this profile is reached.
     *
     * @param serialNumber by which the board is known
     * @return gives a new, closed port for each attempt to connect, all of the same board
     */
    Supplier<Port> ports(PortAddress address, String serialNumber);
}
