package org.ebbwatch.sim.fault;

/** What a fault can wait for. */
public enum Happening {
    /** The beginning of the scenario. */
    START,
    /** A load was applied, by switch or by hand. */
    LOAD_CLOSED,
    /** A load was taken off, by switch or by hand. */
    LOAD_OPENED,
    /** The leads were bonded. */
    BONDED,
    /** The bond was parted by a person. */
    PARTED
}
