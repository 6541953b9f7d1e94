package org.ebbwatch.store;

import java.util.UUID;

/**
 * A message to the outside.
 *
 * @param number orders the messages of this service, from 1
 * @param id the same at each attempt to send it
 * @param alarm which alarm it tells of; null where it is about the rack
 * @param outlet by which way it leaves
 * @param rings whether it should wake a person
 * @param body what is sent
 * @param written when, by the host's wall clock
 */
public record OutboxRow(
        long number, UUID id, UUID alarm, String outlet, boolean rings, String body, WallLabel written) {}
