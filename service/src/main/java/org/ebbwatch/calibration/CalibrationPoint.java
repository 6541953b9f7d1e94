package org.ebbwatch.calibration;

/**
 * A channel held against a voltage that is known.
 *
 * @param shownVolts by the meter; 0 where the leads are shorted, which needs none
 * @param readVolts mean of what the board read, by the scale it states itself
 * @param deviationVolts standard deviation of one of these readings, 0 or more
 */
public record CalibrationPoint(double shownVolts, double readVolts, double deviationVolts) {
    /** So many readings are taken for a point. */
    public static final int READINGS = 10;

    public CalibrationPoint {
        if (!Double.isFinite(shownVolts) || !Double.isFinite(readVolts) || !(deviationVolts >= 0)) {
            throw new IllegalArgumentException(
                    "a point is made of numbers, not of " + shownVolts + ", " + readVolts + " and " + deviationVolts);
        }
    }

    /** Leads shorted. */
    public static CalibrationPoint shorted(double readVolts, double deviationVolts) {
        return new CalibrationPoint(0, readVolts, deviationVolts);
    }
}
