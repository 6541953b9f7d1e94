package org.ebbwatch.profile;

import java.util.Optional;
import org.ebbwatch.rig.sensor.Conversion;

/**
 * How a temperature comes out of a scan's raw numbers.
 *
 * @param of the sensor's value in the unit its thermometer takes
 * @param by the sensor
 * @param junction degrees Celsius of a thermocouple's terminals; empty for any other sensor
 */
public record Temperature(Quantity of, Thermometer by, Optional<Quantity> junction) {

    /** The temperature, or why there is none. */
    public Conversion in(double[] raws) {
        if (of.isOpen(raws) || junction.filter(it -> it.isOpen(raws)).isPresent()) {
            return Conversion.Fault.OPEN;
        }
        double junctionCelsius = junction.map(it -> it.of(raws)).orElse(Double.NaN);
        return by.convert(of.of(raws), junctionCelsius);
    }
}
