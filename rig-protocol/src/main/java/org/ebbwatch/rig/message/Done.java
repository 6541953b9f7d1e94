package org.ebbwatch.rig.message;

/**
 * A request was carried out, and the board checked it as far as it can.
 *
 * @param requestSequence sequence of the frame that asked, u16
 * @param requestKind kind byte of that frame, 0 to 255
 */
public record Done(int requestSequence, int requestKind) implements BoardMessage {
    public Done {
        Bounds.u16("requestSequence", requestSequence);
        Bounds.u8("requestKind", requestKind);
    }

    @Override
    public Kind kind() {
        return Kind.DONE;
    }
}
