package org.ebbwatch.rig.message;

/**
 * Asks a board to sound its buzzer.
 *
 * @param seconds how long, 0 to 255; 0 stops it
 */
public record Buzzer(int seconds) implements HostMessage {
    public Buzzer {
        Bounds.u8("seconds", seconds);
    }

    @Override
    public Kind kind() {
        return Kind.BUZZER;
    }
}
