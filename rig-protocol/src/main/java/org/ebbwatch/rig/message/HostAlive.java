package org.ebbwatch.rig.message;

/**
 * The host lives and has seen a scan; keeps the board's loads from opening, and gives a simulated board credit to run on.
 *
 * @param bootNumber the boot number of that scan, u32
 * @param lastScan the last scan the host holds complete, u32; 0: none yet
 */
public record HostAlive(long bootNumber, long lastScan) implements HostMessage {
    public HostAlive {
        Bounds.u32("bootNumber", bootNumber);
        Bounds.u32("lastScan", lastScan);
    }

    @Override
    public Kind kind() {
        return Kind.HOST_ALIVE;
    }
}
