package org.ebbwatch.alarm.outlet;

import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.WallQuality;

/** A host's time that passes only when it is told to. */
final class ManualTime {
    private long millis = 1_000;

    void pass(long more) {
        millis += more;
    }

    HostTime now() {
        return new HostTime("host", millis * 1_000_000, 1_795_608_000_000L + millis, WallQuality.KNOWN);
    }
}
