package org.ebbwatch.rack;

import java.time.LocalTime;
import java.util.Optional;
import java.util.OptionalInt;
import org.ebbwatch.judge.FindingKind.Urgency;

/**
 * A way alarms leave, and what it is used for.
 *
 * @param name under which its messages are kept; unique
 * @param from the least urgent alarm it is told of
 * @param hours in which it is told of what is no danger; empty: always
 * @param escalateAfterMinutes how long nobody must have acknowledged an alarm before it is told; empty: it is told at once
 * @param way the way itself
 */
public record OutletEntry(
        String name, Urgency from, Optional<HoursEntry> hours, OptionalInt escalateAfterMinutes, WayEntry way) {

    /** Local times, the first included, the second not; never the same. */
    public record HoursEntry(LocalTime from, LocalTime to) {}
}
