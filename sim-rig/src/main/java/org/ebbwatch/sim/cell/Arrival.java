package org.ebbwatch.sim.cell;

/** What state a cell comes in. */
public enum Arrival {
    /** Its terminals show its charge. */
    SOUND,
    /** Its internal disconnect is open: full or not, it shows nothing and gives nothing. */
    DISCONNECTED,
    /** Long dead: no charge left at all, whatever its spec says. */
    DEAD
}
