package org.ebbwatch.alarm;

import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.WallQuality;

/** A host clock that goes on only when it is told to; it begins at noon, 2026-11-25T12:00Z. */
final class HandClock implements HostClock {
    private long millis = 1_795_608_000_000L;

    void pass(long more) {
        millis += more;
    }

    @Override
    public HostTime now() {
        return new HostTime("host", (millis - 1_795_000_000_000L) * 1_000_000, millis, WallQuality.KNOWN);
    }
}
