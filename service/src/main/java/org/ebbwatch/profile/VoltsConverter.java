package org.ebbwatch.profile;

/**
 * What measures a device's volts, dividers before it included.
 *
 * @param lowestVolts the least it can give
 * @param highestVolts the most, above the lowest
 * @param offsetVolts expanded uncertainty (k = 2) of its offset
 * @param gainFraction expanded uncertainty of its gain, as a fraction of the reading
 */
public record VoltsConverter(double lowestVolts, double highestVolts, double offsetVolts, double gainFraction) {
    /** The farthest from 0 a converter may reach, volts. */
    public static final double FARTHEST_VOLTS = 1_000;

    private static final double BEYOND_FRACTION = 0.05;

    public VoltsConverter {
        if (!(lowestVolts < highestVolts && lowestVolts >= -FARTHEST_VOLTS && highestVolts <= FARTHEST_VOLTS)) {
            throw new IllegalArgumentException("lowestVolts must be below highestVolts, both within 1000 V");
        }
    }

    /** At an end of the range, or a little beyond as an offset or a calibration makes it. */
    boolean isAtRail(double volts) {
        return volts <= lowestVolts || volts >= highestVolts;
    }

    /** So far beyond the range that no converter gave it: not a measurement. */
    boolean isAbsurd(double volts) {
        double beyond = BEYOND_FRACTION * (highestVolts - lowestVolts);
        return !(volts >= lowestVolts - beyond && volts <= highestVolts + beyond);
    }
}
