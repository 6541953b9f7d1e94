package org.ebbwatch.passage;

import java.util.UUID;
import org.ebbwatch.judge.Phase;

/**
 * What came of a request that was done.
 *
 * @param passage whose
 * @param sequence the passage's sequence afterwards, by which it can be acted on next
 * @param board the board the passage is on
 * @param channel the channel it is on, from 0
 * @param phase the phase it is in
 * @param reason why it is in that phase
 */
public record Receipt(UUID passage, long sequence, String board, int channel, Phase phase, String reason) {}
