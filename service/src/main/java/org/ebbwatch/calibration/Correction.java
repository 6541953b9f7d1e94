package org.ebbwatch.calibration;

/**
 * From what a board reads of a channel to the volts at its terminals: a straight line, and how far it may be off.
 *
 * <p>A converter that bends near 0 V, as many that read 0 below 0.1 V, follows no line there. {@code bottomVolts} is then the
 * doubt at shorted leads; it is added in full to the uncertainty of whatever reads no more, and falls off in a straight line to
 * nothing at {@code straightVolts}.
 *
 * @param offsetVolts added
 * @param gain by which a reading is multiplied
 * @param expandedOffsetVolts expanded uncertainty (k = 2) at any voltage, above 0
 * @param expandedGain expanded uncertainty (k = 2) relative to the voltage, 0 or more
 * @param bottomVolts 0 where the line holds down to 0 V
 * @param lowestVolts what shorted leads come to
 * @param straightVolts from here on the line holds
 */
public record Correction(
        double offsetVolts,
        double gain,
        double expandedOffsetVolts,
        double expandedGain,
        double bottomVolts,
        double lowestVolts,
        double straightVolts) {
    public Correction {
        if (!Double.isFinite(offsetVolts) || !(gain > 0) || !(expandedOffsetVolts > 0) || !(expandedGain >= 0)) {
            throw new IllegalArgumentException("no correction: offset " + offsetVolts + " V, gain " + gain
                    + ", uncertain by " + expandedOffsetVolts + " V and " + expandedGain);
        }
        if (!(bottomVolts >= 0) || !(straightVolts > lowestVolts)) {
            throw new IllegalArgumentException(
                    "no bottom: " + bottomVolts + " V from " + lowestVolts + " to " + straightVolts + " V");
        }
    }

    /** The volts at the terminals of what the board reads. */
    public double volts(double readVolts) {
        return offsetVolts + gain * readVolts;
    }

    /**
     * Expanded uncertainty (k = 2) of corrected volts.
     *
     * @param resolutionVolts the step of one count as the board states it, above 0
     */
    public double expandedVolts(double volts, double resolutionVolts) {
        double resolution = 2 * gain * resolutionVolts / StrictMath.sqrt(12);
        double scaled = expandedGain * volts;
        return StrictMath.sqrt(expandedOffsetVolts * expandedOffsetVolts + scaled * scaled + resolution * resolution)
                + bottom(volts);
    }

    private double bottom(double volts) {
        double share = (straightVolts - volts) / (straightVolts - lowestVolts);
        return bottomVolts * Math.max(0, Math.min(1, share));
    }
}
