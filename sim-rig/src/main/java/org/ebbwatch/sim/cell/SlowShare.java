package org.ebbwatch.sim.cell;

/**
 * Active material in poor contact with the rest: it gives its charge to the rest, in proportion to how much fuller it is,
 * with a time constant of hours. A load held near 0 V empties the rest within minutes and this material hardly at all; it is
 * what brings a slow cell back a day later.
 *
 * @param share of the cell's capacity, 0 (none) to 0.5
 * @param hours time constant of the exchange, 0.2 to 1000
 */
public record SlowShare(double share, double hours) {
    /** All material is in good contact. */
    public static final SlowShare NONE = new SlowShare(0, 1);
    /** From 0 V back to some 0.04 V in ten minutes, 0.4 V in three hours and 0.9 V in a day, after one 12 h hold. */
    public static final SlowShare TYPICAL = new SlowShare(0.02, 5.4);

    public SlowShare {
        if (!(share >= 0 && share <= 0.5)) {
            throw new IllegalArgumentException("slow share is " + share + ", allowed is 0 to 0.5");
        }
        if (!(hours >= 0.2 && hours <= 1000)) {
            throw new IllegalArgumentException("slow hours is " + hours + ", allowed is 0.2 to 1000");
        }
    }
}
