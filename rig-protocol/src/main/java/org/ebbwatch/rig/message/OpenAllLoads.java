package org.ebbwatch.rig.message;

/** Asks a board to disconnect every load, by its relay where it has one. */
public record OpenAllLoads() implements HostMessage {
    @Override
    public Kind kind() {
        return Kind.OPEN_ALL_LOADS;
    }
}
