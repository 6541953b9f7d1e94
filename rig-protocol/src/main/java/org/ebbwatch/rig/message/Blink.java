package org.ebbwatch.rig.message;

/**
 * Asks a board to blink the lamp at one channel.
 *
 * @param channel 0-based, 0 to 254
 * @param seconds how long, 0 to 255; 0 stops it
 */
public record Blink(int channel, int seconds) implements HostMessage {
    public Blink {
        Bounds.channel(channel);
        Bounds.u8("seconds", seconds);
    }

    @Override
    public Kind kind() {
        return Kind.BLINK;
    }
}
