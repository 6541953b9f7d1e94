package org.ebbwatch.sim.scenario;

/**
 * Cells on neighbouring channels in series, drained by one load across them all. The load's switch is that of the first
 * channel; the members have no loads of their own.
 *
 * @param firstChannel 0-based
 * @param cells how many, 2 to 64
 * @param loadOhms nominal resistance of the load across all of them, above 0
 * @param switched the board switches the load; otherwise a person puts it on
 */
public record StringSpec(int firstChannel, int cells, double loadOhms, boolean switched) {
    public StringSpec {
        Ranges.within("firstChannel", firstChannel, 0, 63);
        Ranges.within("cells", cells, 2, 64);
        Ranges.within("loadOhms", loadOhms, 0.01, 1e6);
    }

    /** Whether a channel belongs to it. */
    public boolean contains(int channel) {
        return channel >= firstChannel && channel < firstChannel + cells;
    }
}
