/**
 * One record per message of the rig protocol, validated where it is made. Nothing here knows bytes or ports; the wire
 * format of each message is in {@code org.ebbwatch.rig.wire} and in {@code docs/rig-protocol.md}.
 */
package org.ebbwatch.rig.message;
