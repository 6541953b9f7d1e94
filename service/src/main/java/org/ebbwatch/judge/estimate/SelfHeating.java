package org.ebbwatch.judge.estimate;

/**
 * How much warmer than its surroundings a cell should be from its own current: I²r over one lump of heat capacity and one
 * path to the air, a first-order lag.
 *
 * <p>24 K/W and 1100 s for an 18650 cell of 3 Ah in still air (computed from its area, 4.18e-3 m², and 10 W/m²K); other sizes
 * go with their surface, the two-thirds power of the capacity. Heat of reaction is left away, so are neighbours. Known to a
 * factor of two, not better. Constant memory: two numbers.
 */
public final class SelfHeating {
    private static final double KELVIN_PER_WATT = 24;
    private static final double AMPERE_HOURS = 3;
    private static final double SURFACE_POWER = 2.0 / 3;
    private static final double LAG_SECONDS = 1_100;

    private final double kelvinPerWatt;
    private double kelvin;

    public SelfHeating(double ratedAmpereHours) {
        this.kelvinPerWatt = KELVIN_PER_WATT * StrictMath.pow(AMPERE_HOURS / ratedAmpereHours, SURFACE_POWER);
    }

    /** So many amperes through so many ohms within the cell, for so long. */
    public void add(double amperes, double internalOhms, double seconds) {
        double end = amperes * amperes * internalOhms * kelvinPerWatt;
        kelvin += (end - kelvin) * Math.min(1, seconds / LAG_SECONDS);
    }

    /** Kelvin above the surroundings. */
    public double kelvin() {
        return kelvin;
    }
}
