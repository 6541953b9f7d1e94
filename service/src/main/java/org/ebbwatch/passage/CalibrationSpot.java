package org.ebbwatch.passage;

import org.ebbwatch.calibration.CalibrationRule;

/** The three voltages a channel is calibrated at, in the order they are taken. */
public enum CalibrationSpot {
    /** The channel's two leads clipped together, no cell on them. */
    SHORTED(0, 0),
    /** About 0.5 V. */
    LOW(CalibrationRule.LEAST_LOW_VOLTS, CalibrationRule.MOST_LOW_VOLTS),
    /** About 4 V. */
    HIGH(CalibrationRule.LEAST_HIGH_VOLTS, CalibrationRule.MOST_HIGH_VOLTS);

    private final double leastVolts;
    private final double mostVolts;

    CalibrationSpot(double leastVolts, double mostVolts) {
        this.leastVolts = leastVolts;
        this.mostVolts = mostVolts;
    }

    /** The meter shows at least so much. */
    public double leastVolts() {
        return leastVolts;
    }

    /** And at most so much. */
    public double mostVolts() {
        return mostVolts;
    }
}
