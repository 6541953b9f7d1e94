package org.ebbwatch.rig.sensor;

/**
 * A thermocouple with its cold junction measured beside its terminals. A couple shorted somewhere along its leads measures
 * the temperature of that place, and nothing in its millivolts tells.
 *
 * @param type the pair of metals
 * @param toleranceKelvin how far the couple may be off its type, plus or minus
 */
public record Thermocouple(ThermocoupleType type, double toleranceKelvin) {
    public Thermocouple {
        Uncertainty.require("toleranceKelvin", toleranceKelvin);
    }

    /**
     * The temperature of the measuring junction. More millivolts than the type can give are an open couple, pulled up by the
     * converter's burn-out current; fewer are out of range.
     *
     * @param millivolts at the terminals
     * @param expandedMillivolts expanded uncertainty (k = 2) of those millivolts
     * @param junctionCelsius temperature of the terminals
     * @param expandedJunction expanded uncertainty (k = 2) of the terminals' temperature, kelvin
     */
    public Conversion convert(
            double millivolts, double expandedMillivolts, double junctionCelsius, double expandedJunction) {
        Uncertainty.require("expandedMillivolts", expandedMillivolts);
        Uncertainty.require("expandedJunction", expandedJunction);
        if (Double.isNaN(millivolts) || Double.isNaN(junctionCelsius)) {
            return Conversion.Fault.NOT_A_NUMBER;
        }
        if (junctionCelsius < ThermocoupleType.LOWEST_CELSIUS || junctionCelsius > type.highestCelsius()) {
            return Conversion.Fault.OUT_OF_RANGE;
        }
        double against0 = millivolts + type.millivolts(junctionCelsius);
        if (against0 > type.millivolts(type.highestCelsius())) {
            return Conversion.Fault.OPEN;
        }
        if (against0 < type.millivolts(ThermocoupleType.LOWEST_CELSIUS)) {
            return Conversion.Fault.OUT_OF_RANGE;
        }
        double celsius = type.celsius(against0);
        double slope = type.millivoltsPerKelvin(celsius);
        double expanded = Uncertainty.expanded(
                Uncertainty.rectangular(toleranceKelvin),
                Uncertainty.standard(expandedMillivolts) / slope,
                Uncertainty.standard(expandedJunction) * type.millivoltsPerKelvin(junctionCelsius) / slope);
        return new Conversion.Celsius(celsius, expanded);
    }
}
