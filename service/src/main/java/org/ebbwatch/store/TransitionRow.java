package org.ebbwatch.store;

import java.util.UUID;

/**
 * A passage went from one phase to another.
 *
 * @param passage whose
 * @param sequence orders the transitions of a passage
 * @param eventMillis event time of the entry that caused it
 * @param fromPhase phase before
 * @param toPhase phase after
 * @param reason why
 */
public record TransitionRow(
        UUID passage, long sequence, long eventMillis, String fromPhase, String toPhase, String reason) {}
