package org.ebbwatch.rig.message;

import java.util.Objects;

/**
 * A request was not carried out.
 *
 * @param requestSequence sequence of the frame that asked, u16
 * @param requestKind kind byte of that frame, 0 to 255, known or not
 * @param channel the channel asked for, 0 to 254, or {@link #NO_CHANNEL}
 * @param reason why
 */
public record Refused(int requestSequence, int requestKind, int channel, RefusalReason reason) implements BoardMessage {
    /** The request named no channel. */
    public static final int NO_CHANNEL = -1;

    public Refused {
        Bounds.u16("requestSequence", requestSequence);
        Bounds.u8("requestKind", requestKind);
        Bounds.within("channel", channel, NO_CHANNEL, Bounds.CHANNEL_HIGHEST);
        Objects.requireNonNull(reason, "reason");
    }

    @Override
    public Kind kind() {
        return Kind.REFUSED;
    }
}
