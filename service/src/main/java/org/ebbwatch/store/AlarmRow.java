package org.ebbwatch.store;

import java.util.UUID;

/**
 * An alarm as it is after its last step.
 *
 * @param id time-ordered
 * @param kind what is the matter
 * @param subject what it is about; no two that are alive have the same kind and subject
 * @param state by its condition
 * @param cover what a person put over it
 * @param alive whether it is still in the book
 * @param raised when it was raised first, by the host's wall clock
 * @param body all else, as text
 */
public record AlarmRow(
        UUID id,
        String kind,
        String subject,
        String state,
        String cover,
        boolean alive,
        WallLabel raised,
        String body) {}
