package org.ebbwatch.rack;

import static java.util.Objects.requireNonNull;

import java.time.LocalTime;
import java.util.Set;

/**
 * When the morning report is sent, and by which outlets.
 *
 * @param at local time
 * @param outlets names of the outlets that carry it; at least one
 */
public record MorningEntry(LocalTime at, Set<String> outlets) {
    public MorningEntry {
        requireNonNull(at);
        outlets = Set.copyOf(outlets);
    }
}
