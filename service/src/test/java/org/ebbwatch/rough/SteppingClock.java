package org.ebbwatch.rough;

import java.time.Duration;
import java.util.List;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.acquire.SystemHostClock;
import org.ebbwatch.time.HostTime;

/** This machine's clock, whose wall time is set to something else again and again. Its monotonic time is never touched. */
final class SteppingClock implements HostClock {
    private static final List<Duration> STEPS = List.of(
            Duration.ofHours(1),
            Duration.ofHours(-1),
            Duration.ofHours(-1),
            Duration.ofDays(365),
            Duration.ofDays(-365),
            Duration.ofHours(1),
            Duration.ofDays(-365),
            Duration.ofDays(365));
    private static final long STEP_EVERY_NANOS = 400_000_000L;

    private final HostClock steady = new SystemHostClock();
    private final long begunNanos = steady.now().monotonicNanos();

    @Override
    public HostTime now() {
        HostTime now = steady.now();
        long steps = (now.monotonicNanos() - begunNanos) / STEP_EVERY_NANOS;
        long off = 0;
        for (int step = 0; step < steps % STEPS.size(); step++) {
            off += STEPS.get(step).toMillis();
        }
        return new HostTime(now.hostBoot(), now.monotonicNanos(), now.wallMillis() + off, now.wallQuality());
    }
}
