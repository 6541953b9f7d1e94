package org.ebbwatch.rig.message;

/** Anything that one frame of the rig protocol can carry, in either direction. */
public sealed interface Message permits BoardMessage, HostMessage {
    /** The kind that names this message on the wire. */
    Kind kind();
}
