package org.ebbwatch.rig.message;

/**
 * Asks a board to connect or disconnect the load of one channel.
 *
 * @param channel 0-based, 0 to 254
 * @param applied true connects
 */
public record SetLoad(int channel, boolean applied) implements HostMessage {
    public SetLoad {
        Bounds.channel(channel);
    }

    @Override
    public Kind kind() {
        return Kind.SET_LOAD;
    }
}
