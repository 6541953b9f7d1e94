package org.ebbwatch.handwork;

import io.micronaut.context.annotation.Primary;
import io.micronaut.context.annotation.Requires;
import jakarta.inject.Singleton;
import java.util.concurrent.atomic.AtomicLong;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.WallQuality;

/** The clocks of a place: the wall clock goes with the rack, the monotonic one when a test says so. */
@Singleton
@Primary
@Requires(property = "served.rack")
public class PlaceClock implements HostClock {
    private final QuietRack rack;
    private final AtomicLong nanos = new AtomicLong(1_000_000_000);

    PlaceClock(QuietRack rack) {
        this.rack = rack;
    }

    /** Host time goes by. */
    public void pass(long seconds) {
        nanos.addAndGet(seconds * 1_000_000_000);
    }

    @Override
    public HostTime now() {
        return new HostTime("host", nanos.get(), rack.wallMillis(), WallQuality.KNOWN);
    }
}
