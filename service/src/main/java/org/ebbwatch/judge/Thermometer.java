package org.ebbwatch.judge;

import org.ebbwatch.judge.Entry.Suspicion;
import org.ebbwatch.judge.procedure.Procedure.Plausible;

/**
 * Decides whether one temperature may be believed.
 *
 * <p>85.0 and -127 degC are what common one-wire sensors say when a conversion was missed or the sensor is gone (source:
 * data sheet of a one-wire digital thermometer; the second is a driver's constant, common practice). 85.0 is believed only
 * where the last believed reading led there.
 */
final class Thermometer {
    private static final double MISSED_CONVERSION_CELSIUS = 85.0;
    private static final double SUDDEN_KELVIN = 5;

    private final String name;
    private double lastBelieved = Double.NaN;

    Thermometer(String name) {
        this.name = name;
    }

    /** What speaks against a reading, in a few words; empty if nothing does. */
    String complaint(double read, Suspicion suspect, Plausible plausible) {
        if (suspect == Suspicion.SENSOR_OPEN) {
            return name + " sensor open";
        }
        if (suspect == Suspicion.CELSIUS_AT_RAIL) {
            return name + " at the end of its range";
        }
        if (Double.isNaN(read)) {
            return name + " not read";
        }
        if (read < plausible.lowestCelsius() || read > plausible.highestCelsius()) {
            return "absurd " + name;
        }
        if (read == MISSED_CONVERSION_CELSIUS && !(Math.abs(read - lastBelieved) < SUDDEN_KELVIN)) {
            return name + " reads a missed conversion";
        }
        lastBelieved = read;
        return "";
    }
}
