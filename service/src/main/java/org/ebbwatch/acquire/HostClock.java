package org.ebbwatch.acquire;

import org.ebbwatch.time.HostTime;

/** Where the moments of the host come from. */
@FunctionalInterface
public interface HostClock {
    HostTime now();
}
