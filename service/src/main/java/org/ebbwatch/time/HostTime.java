package org.ebbwatch.time;

import java.util.Objects;
import java.util.OptionalLong;

/**
 * One moment as the host sees it.
 *
 * @param hostBoot names the host's run since it was switched on; monotonic times of different runs cannot be compared
 * @param monotonicNanos nanoseconds of a clock that never steps, from an origin that means nothing
 * @param wallMillis milliseconds since 1970-01-01T00:00Z, a label
 * @param wallQuality how far the label can be believed
 */
public record HostTime(String hostBoot, long monotonicNanos, long wallMillis, WallQuality wallQuality) {

    private static final long NANOS_PER_MILLI = 1_000_000L;

    public HostTime {
        Objects.requireNonNull(hostBoot, "hostBoot");
        Objects.requireNonNull(wallQuality, "wallQuality");
    }

    /** Milliseconds since {@code earlier} by the monotonic clock, never negative; empty when the host was restarted in between. */
    public OptionalLong monotonicMillisSince(HostTime earlier) {
        if (!hostBoot.equals(earlier.hostBoot)) {
            return OptionalLong.empty();
        }
        return OptionalLong.of(Math.max(0, (monotonicNanos - earlier.monotonicNanos) / NANOS_PER_MILLI));
    }

    /** Milliseconds since {@code earlier} by the wall clock; empty where either label is not believed or the wall clock went back. */
    public OptionalLong wallMillisSince(HostTime earlier) {
        boolean believed = wallQuality == WallQuality.KNOWN && earlier.wallQuality == WallQuality.KNOWN;
        if (!believed || wallMillis < earlier.wallMillis) {
            return OptionalLong.empty();
        }
        return OptionalLong.of(wallMillis - earlier.wallMillis);
    }
}
