package org.ebbwatch.rig.sensor;

/**
 * A sensor whose millivolts are a straight line over the temperature, such as 10 mV/K.
 *
 * <p>Its range is what tells a fault from a temperature: choose it so that neither a shorted nor an open input lies in it. A
 * part that gives 0 mV at 0 degrees Celsius reads a short as freezing; begin its range at 2 degrees.
 *
 * @param millivoltsAtZero at 0 degrees Celsius
 * @param millivoltsPerKelvin slope, not 0; may be negative
 * @param lowestCelsius where its range begins
 * @param highestCelsius where it ends, above the lowest
 * @param toleranceKelvin how far the sensor may be off the line, plus or minus
 */
public record LinearSensor(
        double millivoltsAtZero,
        double millivoltsPerKelvin,
        double lowestCelsius,
        double highestCelsius,
        double toleranceKelvin) {
    public LinearSensor {
        boolean finite = Double.isFinite(millivoltsAtZero)
                && Double.isFinite(millivoltsPerKelvin)
                && Double.isFinite(lowestCelsius)
                && Double.isFinite(highestCelsius);
        if (!finite || millivoltsPerKelvin == 0 || lowestCelsius >= highestCelsius) {
            throw new IllegalArgumentException("a line needs a slope and a range from lowest to highest Celsius");
        }
        Uncertainty.require("toleranceKelvin", toleranceKelvin);
    }

    /**
     * The temperature of so many millivolts; fewer than its range gives are a short, more are an open sensor.
     *
     * @param expandedMillivolts expanded uncertainty (k = 2) of those millivolts
     */
    public Conversion convert(double millivolts, double expandedMillivolts) {
        Uncertainty.require("expandedMillivolts", expandedMillivolts);
        if (Double.isNaN(millivolts)) {
            return Conversion.Fault.NOT_A_NUMBER;
        }
        double atOneEnd = millivolts(lowestCelsius);
        double atOtherEnd = millivolts(highestCelsius);
        if (millivolts < Math.min(atOneEnd, atOtherEnd)) {
            return Conversion.Fault.SHORT;
        }
        if (millivolts > Math.max(atOneEnd, atOtherEnd)) {
            return Conversion.Fault.OPEN;
        }
        double expanded = Uncertainty.expanded(
                Uncertainty.rectangular(toleranceKelvin),
                Uncertainty.standard(expandedMillivolts) / millivoltsPerKelvin);
        return new Conversion.Celsius((millivolts - millivoltsAtZero) / millivoltsPerKelvin, expanded);
    }

    private double millivolts(double celsius) {
        return millivoltsAtZero + millivoltsPerKelvin * celsius;
    }
}
