package org.ebbwatch.rig.message;

/** Asks a board for its {@link Identity}. */
public record Who() implements HostMessage {
    @Override
    public Kind kind() {
        return Kind.WHO;
    }
}
