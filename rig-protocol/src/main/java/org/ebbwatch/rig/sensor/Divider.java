package org.ebbwatch.rig.sensor;

/**
 * A fixed resistor and a sensor in series across a reference; the converter sees the part of the reference between them.
 *
 * @param fixedOhms above 0
 * @param place which of the two the converter's reading lies across
 */
public record Divider(double fixedOhms, Place place) {
    /** Where the sensor sits. */
    public enum Place {
        /** Between the converter's input and ground; an open sensor reads the whole reference. */
        SENSOR_LOW,
        /** Between the reference and the converter's input; an open sensor reads 0. */
        SENSOR_HIGH
    }

    public Divider {
        if (!(fixedOhms > 0) || Double.isInfinite(fixedOhms)) {
            throw new IllegalArgumentException("fixedOhms is " + fixedOhms + ", allowed is above 0");
        }
    }

    /** The sensor's ohms at a reading of so much of the reference, 0 to 1; 0 and infinite at the ends, NaN beyond. */
    public double ohms(double ratio) {
        double low = place == Place.SENSOR_LOW ? ratio : 1 - ratio;
        if (!(low >= 0 && low <= 1)) {
            return Double.NaN;
        }
        return low == 1 ? Double.POSITIVE_INFINITY : fixedOhms * low / (1 - low);
    }

    /** The part of the reference that a sensor of so many ohms gives, 0 to 1. */
    public double ratio(double ohms) {
        double low = Double.isInfinite(ohms) ? 1 : ohms / (ohms + fixedOhms);
        return place == Place.SENSOR_LOW ? low : 1 - low;
    }

    /**
     * Expanded uncertainty (k = 2) of {@link #ohms}, infinite at the ends.
     *
     * @param ratio the reading
     * @param expandedRatio expanded uncertainty of the reading
     * @param fixedToleranceFraction how far the fixed resistor may be off, plus or minus, as a fraction
     */
    public double expandedOhms(double ratio, double expandedRatio, double fixedToleranceFraction) {
        Uncertainty.require("expandedRatio", expandedRatio);
        Uncertainty.require("fixedToleranceFraction", fixedToleranceFraction);
        double ohms = ohms(ratio);
        double ohmsPerRatio = (ohms + fixedOhms) * (ohms + fixedOhms) / fixedOhms;
        return Uncertainty.expanded(
                Uncertainty.standard(expandedRatio) * ohmsPerRatio,
                Uncertainty.rectangular(fixedToleranceFraction * ohms));
    }
}
