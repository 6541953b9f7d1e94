package org.ebbwatch.rig.message;

/**
 * Asks a board to prove whether a cell is attached to one channel.
 *
 * @param channel 0-based, 0 to 254
 */
public record CheckLead(int channel) implements HostMessage {
    public CheckLead {
        Bounds.channel(channel);
    }

    @Override
    public Kind kind() {
        return Kind.CHECK_LEAD;
    }
}
