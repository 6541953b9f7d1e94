package org.ebbwatch.web;

import io.micronaut.context.annotation.Primary;
import io.micronaut.context.annotation.Requires;
import jakarta.inject.Singleton;
import java.util.concurrent.atomic.AtomicLong;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.WallQuality;

/** A host whose clocks move only when a test moves them; it begins 0.4 s after the last scan of the invented workshop. */
@Singleton
@Primary
@Requires(property = "invented.rack")
public class HandClock implements HostClock {
    private final AtomicLong wallMillis = new AtomicLong(InventedWorkshop.SCANNED_MILLIS + 400);
    private final AtomicLong monotonicNanos = new AtomicLong(7_000_000_000L);

    /** Both clocks go on. */
    public void pass(double seconds) {
        wallMillis.addAndGet(Math.round(seconds * 1e3));
        monotonicNanos.addAndGet(Math.round(seconds * 1e9));
    }

    /** The wall clock alone is set by so much. */
    public void stepWall(double seconds) {
        wallMillis.addAndGet(Math.round(seconds * 1e3));
    }

    @Override
    public HostTime now() {
        return new HostTime("host", monotonicNanos.get(), wallMillis.get(), WallQuality.KNOWN);
    }
}
