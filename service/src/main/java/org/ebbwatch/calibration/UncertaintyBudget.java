package org.ebbwatch.calibration;

/**
 * What the uncertainty of a voltage behind a divider is made of, and what it comes to (JCGM 100, GUM: 4.3.7 for rectangular
 * distributions, 5.1.2 for independent contributions, 6.2.1 for the expanded uncertainty with k = 2).
 *
 * <p>A half-width is the limit a maker states: the true value lies within it, anywhere alike. All are 0 or more.
 *
 * @param volts the voltage at the terminals
 * @param resolutionVolts standard uncertainty of the step of one count
 * @param referenceVolts of the converter's reference
 * @param dividerVolts of the divider's ratio
 * @param offsetVolts of the converter's offset
 * @param calibrationVolts of the instrument it was calibrated with
 * @param noiseVolts of the noise of one reading, or of the mean of several
 */
public record UncertaintyBudget(
        double volts,
        double resolutionVolts,
        double referenceVolts,
        double dividerVolts,
        double offsetVolts,
        double calibrationVolts,
        double noiseVolts) {
    private static final double COVERAGE = 2;

    /**
     * What is known of a channel.
     *
     * @param countVolts the step of one count at the terminals
     * @param referenceHalfWidth relative
     * @param upperOhms of the divider, 0 where there is none
     * @param lowerOhms of the divider, above 0
     * @param resistorHalfWidth relative, of each of the two resistors, independent of each other
     * @param offsetHalfWidthVolts at the terminals
     * @param calibrationExpandedVolts as its certificate states it (k = 2)
     * @param noiseDeviationVolts standard deviation of a reading
     */
    public record Channel(
            double countVolts,
            double referenceHalfWidth,
            double upperOhms,
            double lowerOhms,
            double resistorHalfWidth,
            double offsetHalfWidthVolts,
            double calibrationExpandedVolts,
            double noiseDeviationVolts) {
        public Channel {
            requireNotNegative("countVolts", countVolts);
            requireNotNegative("referenceHalfWidth", referenceHalfWidth);
            requireNotNegative("upperOhms", upperOhms);
            requireNotNegative("resistorHalfWidth", resistorHalfWidth);
            requireNotNegative("offsetHalfWidthVolts", offsetHalfWidthVolts);
            requireNotNegative("calibrationExpandedVolts", calibrationExpandedVolts);
            requireNotNegative("noiseDeviationVolts", noiseDeviationVolts);
            if (!(lowerOhms > 0)) {
                throw new IllegalArgumentException("lowerOhms must be above 0, not " + lowerOhms);
            }
        }

        /** The budget of a voltage at the terminals. */
        public UncertaintyBudget at(double volts) {
            double size = Math.abs(volts);
            // V = Vadc (R1 + R2) / R2: the relative sensitivity to either resistor is R1 / (R1 + R2).
            double sensitivity = upperOhms / (upperOhms + lowerOhms) * StrictMath.sqrt(2);
            return new UncertaintyBudget(
                    volts,
                    rectangular(countVolts / 2),
                    rectangular(size * referenceHalfWidth),
                    rectangular(size * sensitivity * resistorHalfWidth),
                    rectangular(offsetHalfWidthVolts),
                    calibrationExpandedVolts / COVERAGE,
                    noiseDeviationVolts);
        }
    }

    /** The standard uncertainty of all contributions together. */
    public double standardVolts() {
        return StrictMath.sqrt(resolutionVolts * resolutionVolts
                + referenceVolts * referenceVolts
                + dividerVolts * dividerVolts
                + offsetVolts * offsetVolts
                + calibrationVolts * calibrationVolts
                + noiseVolts * noiseVolts);
    }

    /** U with k = 2: about 95 % of readings lie so near to the true voltage. */
    public double expandedVolts() {
        return COVERAGE * standardVolts();
    }

    private static double rectangular(double halfWidth) {
        return halfWidth / StrictMath.sqrt(3);
    }

    private static void requireNotNegative(String name, double number) {
        if (!(number >= 0)) {
            throw new IllegalArgumentException(name + " must be 0 or more, not " + number);
        }
    }
}
