package org.ebbwatch.rig.sensor;

/**
 * A thermistor that falls as it warms.
 *
 * @param curve the curve of its type
 * @param toleranceFraction how far its ohms may be off those of the curve, plus or minus, as a fraction: 0.01 for 1 %
 */
public record Ntc(NtcCurve curve, double toleranceFraction) {
    public Ntc {
        Uncertainty.require("toleranceFraction", toleranceFraction);
    }

    /**
     * The temperature of so many ohms. Beyond the cold end of the curve the sensor is open, beyond the hot end shorted: never
     * a temperature, for an open sensor would hide heat.
     *
     * @param ohms of the thermistor alone; infinite where a divider stands at its rail
     * @param expandedOhms expanded uncertainty (k = 2) of those ohms
     */
    public Conversion convert(double ohms, double expandedOhms) {
        if (Double.isNaN(ohms)) {
            return Conversion.Fault.NOT_A_NUMBER;
        }
        if (ohms > curve.highestOhms()) {
            return Conversion.Fault.OPEN;
        }
        if (ohms < curve.lowestOhms()) {
            return Conversion.Fault.SHORT;
        }
        Uncertainty.require("expandedOhms", expandedOhms);
        double kelvinPerLogOhms = curve.kelvinPerLogOhms(ohms);
        double expanded = Uncertainty.expanded(
                Uncertainty.rectangular(curve.errorKelvin()),
                Uncertainty.rectangular(toleranceFraction * kelvinPerLogOhms),
                Uncertainty.standard(expandedOhms) / ohms * kelvinPerLogOhms);
        return new Conversion.Celsius(curve.celsius(ohms), expanded);
    }
}
