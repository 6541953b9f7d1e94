package org.ebbwatch.rig.wire;

import org.ebbwatch.rig.message.Message;

/** Takes what a {@link FrameDecoder} makes of the bytes, in their order, on the thread that fed them. */
public interface FrameSink {
    /** A scan, or a part of one. The view is valid during this call only: the decoder uses it again. */
    void readings(ReadingsView view);

    /**
     * Any other message.
     *
     * @param sequence of its frame, u16
     * @param message never {@link org.ebbwatch.rig.message.Readings}
     */
    void message(int sequence, Message message);

    /**
     * An intact frame of a kind this version does not know; a host skips it, a board answers REFUSED.
     *
     * @param sequence of the frame, u16
     * @param kind its kind byte, 0 to 255
     */
    default void unknownKind(int sequence, int kind) {}

    /** Bytes were dropped. */
    default void rejected(Rejection why) {}
}
