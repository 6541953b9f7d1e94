package org.ebbwatch.alarm.outlet;

import static java.util.Objects.requireNonNull;

import java.util.UUID;

/**
 * A message to the outside.
 *
 * @param id the same at each attempt, so that a receiver can tell a repetition
 * @param number its place among all messages of this service
 * @param rings whether it should wake a person
 * @param body what is sent
 */
public record OutletMessage(UUID id, long number, boolean rings, String body) {
    public OutletMessage {
        requireNonNull(id);
        requireNonNull(body);
    }
}
