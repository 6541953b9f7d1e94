package org.ebbwatch.sizing;

/**
 * A room that must not get warm: an ambient above the procedure's limit hides a cell's own warmth.
 *
 * <p>An estimate. Steady state: half its air changed every hour (0.34 Wh per cubic metre and kelvin) and 1 W per square metre and
 * kelvin through walls, floor and ceiling of a cube of that volume (both from memory of building practice).
 *
 * @param cubicMetres 1 to 100000
 * @param riseKelvin by how much it may warm, 0.1 to 30
 */
public record Room(double cubicMetres, double riseKelvin) {
    /** Air changes an hour. */
    public static final double AIR_CHANGES = 0.5;

    /** Watts per square metre and kelvin. */
    public static final double WALL_LOSS = 1.0;

    private static final double AIR_WATT_HOURS = 0.34;

    public Room {
        Ranges.require("room in cubic metres", cubicMetres, 1, 100_000);
        Ranges.require("rise in kelvin", riseKelvin, 0.1, 30);
    }

    /** Heat it loses for each kelvin it is warmer than outside. */
    public double wattsPerKelvin() {
        double surface = 6 * StrictMath.pow(cubicMetres, 2.0 / 3);
        return AIR_WATT_HOURS * AIR_CHANGES * cubicMetres + WALL_LOSS * surface;
    }

    /** How many sources of so many watts it bears at once. */
    public int bears(double wattsEach) {
        return (int) Math.min(100_000, Math.floor(riseKelvin * wattsPerKelvin() / wattsEach));
    }
}
