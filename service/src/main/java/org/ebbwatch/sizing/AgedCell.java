package org.ebbwatch.sizing;

import org.ebbwatch.judge.procedure.Chemistry;

/**
 * One cell as sizing believes it: a voltage behind a resistance, both functions of the charge that is left.
 *
 * <p>Besides what shows at once, three times as much shows later in a half-full cell, and more towards empty. In recordings of two
 * cells at rest 77 to 79 % of what came back was there after a minute, the rest with a time constant near 1400 s: so a quarter of the
 * later part lags here, the rest counts as there at once. At 0.6 % of charge all of it makes 30 times what shows at once; a recording
 * of a young 18650 drained to 1.0 V and rested has 22 times there, one of an iron phosphate cell 5 times at 1.5 %. The old cells this
 * is for are taken to do worse than young ones.
 *
 * @param ampereHours capacity now
 * @param ohms what shows at once, at half charge
 */
record AgedCell(OpenCircuit openCircuit, double ampereHours, double ohms) {
    /** A cell at the end of its first life has lost a fifth of its rating (common practice, no source). */
    static final double HEALTH = 0.8;

    /** Ohms times ampere hours of an old cell (common practice, no source): 0.15 ohm for one of 1 Ah. */
    static final double OHM_AMPERE_HOURS = 0.15;

    /** Time constant of the part that lags, seconds. */
    static final double LAG_SECONDS = 1_400;

    private static final double LATER = 3;
    private static final double LAGGING_SHARE = 0.25;
    private static final double GROWTH = 12;
    private static final double GROWTH_WIDTH = 0.018;
    private static final double GROWTH_LEVEL_BELOW = -0.01;

    /** An old cell of which only the label is known. */
    static AgedCell ofLabel(Chemistry chemistry, double ratedAmpereHours) {
        return new AgedCell(OpenCircuit.of(chemistry), HEALTH * ratedAmpereHours, OHM_AMPERE_HOURS / ratedAmpereHours);
    }

    /** Resistance that counts as there at once, ohms. */
    double promptOhms(double stateOfCharge) {
        return ohms + (1 - LAGGING_SHARE) * laterOhms(stateOfCharge);
    }

    /** Resistance that shows with a lag, ohms. */
    double laggingOhms(double stateOfCharge) {
        return LAGGING_SHARE * laterOhms(stateOfCharge);
    }

    private double laterOhms(double stateOfCharge) {
        double emptiness = StrictMath.exp(-Math.max(stateOfCharge, GROWTH_LEVEL_BELOW) / GROWTH_WIDTH);
        return LATER * ohms * (1 + GROWTH * emptiness);
    }
}
