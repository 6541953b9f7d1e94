package org.ebbwatch.evening.rule;

import static java.util.Objects.requireNonNull;

import java.util.List;

/**
 * What is known of the machine the service runs on.
 *
 * @param clockKnown whether its wall clock can be believed
 * @param freeBytes on the disk of the records
 * @param neededBytes for a night
 * @param trouble why records cannot be kept; empty if they can
 * @param unwatched a line for each thing the rack file names that nobody watches
 */
public record HostFacts(boolean clockKnown, long freeBytes, long neededBytes, String trouble, List<String> unwatched) {
    public HostFacts {
        requireNonNull(trouble);
        unwatched = List.copyOf(unwatched);
    }
}
