package org.ebbwatch.judge.procedure;

/**
 * Chemistry as far as the judge must know it.
 *
 * <p>All voltages: common practice, no source. Knees lie below the last plateau of each chemistry.
 */
public enum Chemistry {
    /** Layered oxide (NMC, NCA, LCO) against graphite. */
    LAYERED_OXIDE(2.5, 3.3),
    /** Lithium iron phosphate against graphite. */
    LFP(2.0, 3.0);

    private final double kneeVolts;
    private final double plateauVolts;

    Chemistry(double kneeVolts, double plateauVolts) {
        this.kneeVolts = kneeVolts;
        this.plateauVolts = plateauVolts;
    }

    /** Below this voltage a cell on a load must keep falling. */
    public double kneeVolts() {
        return kneeVolts;
    }

    /** Above this voltage on a load its resistance, and so its own warmth, changes only slowly. */
    public double plateauVolts() {
        return plateauVolts;
    }
}
