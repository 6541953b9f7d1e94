package org.ebbwatch.passage;

import java.util.Base64;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.wire.FrameDecoder;
import org.ebbwatch.rig.wire.FrameEncoder;
import org.ebbwatch.rig.wire.FrameSink;
import org.ebbwatch.rig.wire.ReadingsView;

/** A board's identity as text: its own IDENTITY frame with sequence 0, in base 64. */
public final class IdentityText {
    private IdentityText() {}

    public static String write(Identity identity) {
        return Base64.getEncoder().encodeToString(FrameEncoder.encode(identity, 0));
    }

    /**
     * Reads what {@link #write} wrote.
     *
     * @throws IllegalArgumentException if it is no identity
     */
    public static Identity read(String text) {
        byte[] frame = Base64.getDecoder().decode(text);
        var reader = new Reader();
        new FrameDecoder(reader).accept(frame, 0, frame.length);
        if (reader.identity == null) {
            throw new IllegalArgumentException("no identity of a board: " + text);
        }
        return reader.identity;
    }

    private static final class Reader implements FrameSink {
        private Identity identity;

        @Override
        public void readings(ReadingsView view) {}

        @Override
        public void message(int sequence, Message message) {
            if (message instanceof Identity found) {
                identity = found;
            }
        }
    }
}
