package org.ebbwatch.rig.sensor;

/**
 * Two resistors that make a voltage small enough for a converter, which reads it across the lower one.
 *
 * @param upperOhms between the voltage and the converter's input; 0 or more
 * @param lowerOhms between the converter's input and ground; above 0
 * @param toleranceFraction how far each may be off, plus or minus, as a fraction
 */
public record VoltageDivider(double upperOhms, double lowerOhms, double toleranceFraction) {
    public VoltageDivider {
        if (!(upperOhms >= 0 && lowerOhms > 0) || Double.isInfinite(upperOhms) || Double.isInfinite(lowerOhms)) {
            throw new IllegalArgumentException("upperOhms must be 0 or more and lowerOhms above 0");
        }
        Uncertainty.require("toleranceFraction", toleranceFraction);
    }

    /** Volts at the divider's top for each volt at the converter. */
    public double factor() {
        return (upperOhms + lowerOhms) / lowerOhms;
    }

    /**
     * Expanded uncertainty (k = 2) of {@link #factor}, as a fraction of it: both resistors anywhere within their tolerance,
     * independent of each other. Source: JCGM 100.
     */
    public double expandedFraction() {
        double each = Uncertainty.rectangular(toleranceFraction) * upperOhms / (upperOhms + lowerOhms);
        return Uncertainty.expanded(each, each);
    }
}
