/**
 * Frames: bytes to messages and back, by the wire format of {@code docs/rig-protocol.md}. No ports, no threads, no clock;
 * depends on {@code org.ebbwatch.rig.message} and the JDK alone.
 */
package org.ebbwatch.rig.wire;
