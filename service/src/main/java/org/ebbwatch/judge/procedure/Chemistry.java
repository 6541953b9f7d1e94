package org.ebbwatch.judge.procedure;

/**
 * Chemistry as far as the judge must know it.
 *
 * <p>Knee voltages: common practice, no source; they lie below the last plateau of each chemistry.
 */
public enum Chemistry {
    /** Layered oxide (NMC, NCA, LCO) against graphite. */
    LAYERED_OXIDE(2.5),
    /** Lithium iron phosphate against graphite. */
    LFP(2.0);

    private final double kneeVolts;

    Chemistry(double kneeVolts) {
        this.kneeVolts = kneeVolts;
    }

    /** Below this voltage a cell on a load must keep falling. */
    public double kneeVolts() {
        return kneeVolts;
    }
}
