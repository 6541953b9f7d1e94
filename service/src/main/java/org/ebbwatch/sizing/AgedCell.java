package org.ebbwatch.sizing;

import org.ebbwatch.judge.procedure.Chemistry;

/**
 * One cell as sizing believes it: a voltage behind a resistance, both functions of the charge that is left. Nothing in it depends on
 * time, so every duration is an integral over charge.
 *
 * <p>The resistance is that of a slow discharge: what shows at once, three times as much that shows within the hour, and a growth
 * towards empty. At 0.6 % of charge that makes 26 times what shows at once; a recording of a young 18650 drained to 1.0 V and rested
 * has 22 times there, one of an iron phosphate cell 5 times at 1.5 %. The old cells this is for are taken to do worse than young ones.
 *
 * @param ampereHours capacity now
 * @param ohms what shows at once, at half charge
 */
record AgedCell(OpenCircuit openCircuit, double ampereHours, double ohms) {
    /** A cell at the end of its first life has lost a fifth of its rating (common practice, no source). */
    static final double HEALTH = 0.8;

    /** Ohms times ampere hours of an old cell (common practice, no source): 0.15 ohm for one of 1 Ah. */
    static final double OHM_AMPERE_HOURS = 0.15;

    private static final double SLOW_SHARE = 3;
    private static final double GROWTH = 10;
    private static final double GROWTH_WIDTH = 0.018;
    private static final double GROWTH_LEVEL_BELOW = -0.01;

    /** An old cell of which only the label is known. */
    static AgedCell ofLabel(Chemistry chemistry, double ratedAmpereHours) {
        return new AgedCell(
                OpenCircuit.of(chemistry), HEALTH * ratedAmpereHours, OHM_AMPERE_HOURS / ratedAmpereHours);
    }

    /** Resistance against a slow discharge, ohms. */
    double slowOhms(double stateOfCharge) {
        double emptiness = StrictMath.exp(-Math.max(stateOfCharge, GROWTH_LEVEL_BELOW) / GROWTH_WIDTH);
        return ohms * (1 + SLOW_SHARE * (1 + GROWTH * emptiness));
    }
}
