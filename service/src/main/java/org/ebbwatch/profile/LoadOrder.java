package org.ebbwatch.profile;

/**
 * Loads that the host wants switched; to be carried out and then answered.
 *
 * @param requestSequence of the frame that asked
 * @param requestKind of that frame
 * @param channel 0-based, or {@link #EVERY_CHANNEL}
 * @param applied true closes
 */
public record LoadOrder(int requestSequence, int requestKind, int channel, boolean applied) {
    /** The loads of all channels; they only open together. */
    public static final int EVERY_CHANNEL = -1;
}
