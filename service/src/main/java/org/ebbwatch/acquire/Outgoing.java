package org.ebbwatch.acquire;

import java.util.function.Consumer;
import org.ebbwatch.rig.message.HostMessage;
import org.ebbwatch.rig.wire.FrameEncoder;

/** Numbers and sends the host's frames to one board. */
final class Outgoing {

    private final FrameEncoder encoder = new FrameEncoder();
    private final Consumer<byte[]> frames;

    Outgoing(Consumer<byte[]> frames) {
        this.frames = frames;
    }

    /** Sends a delimiter alone, which ends whatever a frame cut short has left in the board's receiver. */
    void delimit() {
        frames.accept(new byte[] {0});
    }

    /** Sends a message and gives its sequence, u16. */
    int send(HostMessage message) {
        frames.accept(encoder.encode(message));
        return encoder.lastSequence();
    }
}
