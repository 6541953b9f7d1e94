package org.ebbwatch.profile;

import org.ebbwatch.rig.sensor.Conversion;
import org.ebbwatch.rig.sensor.Divider;
import org.ebbwatch.rig.sensor.LinearSensor;
import org.ebbwatch.rig.sensor.Ntc;
import org.ebbwatch.rig.sensor.OneWire;
import org.ebbwatch.rig.sensor.Platinum;

/**
 * A temperature sensor together with how well its value is measured. Each case names the unit it takes; uncertainties are
 * expanded (k = 2) and in that unit.
 */
public sealed interface Thermometer {
    /** Temperature of a thermocouple's terminals by which its uncertainty is stated. */
    double USUAL_TERMINALS_CELSIUS = 25;

    /**
     * The temperature, or why there is none.
     *
     * @param measured the sensor's value; NaN where it was not measured
     * @param junctionCelsius of a thermocouple's terminals; any other sensor ignores it
     */
    Conversion convert(double measured, double junctionCelsius);

    /** What the sensor gives at a temperature, its terminals at 25 degrees; NaN where a thermistor's curve does not reach. */
    double measuredAt(double celsius);

    private static double ohmsAt(Ntc ntc, double celsius) {
        return ntc.curve().reaches(celsius) ? ntc.curve().ohms(celsius) : Double.NaN;
    }

    /**
     * A device that converts by itself; takes degrees Celsius.
     *
     * @param lowestCelsius what lies below is no temperature of its range
     * @param highestCelsius what lies above is none either
     * @param expandedKelvin uncertainty of the whole
     */
    record Degrees(double lowestCelsius, double highestCelsius, double expandedKelvin) implements Thermometer {
        @Override
        public Conversion convert(double celsius, double junctionCelsius) {
            if (Double.isNaN(celsius)) {
                return Conversion.Fault.NOT_A_NUMBER;
            }
            return celsius < lowestCelsius || celsius > highestCelsius
                    ? Conversion.Fault.OUT_OF_RANGE
                    : new Conversion.Celsius(celsius, expandedKelvin);
        }

        @Override
        public double measuredAt(double celsius) {
            return celsius;
        }
    }

    /** A thermistor; takes ohms. */
    record Thermistor(Ntc ntc, double expandedOhms) implements Thermometer {
        @Override
        public Conversion convert(double ohms, double junctionCelsius) {
            return ntc.convert(ohms, expandedOhms);
        }

        @Override
        public double measuredAt(double celsius) {
            return ohmsAt(ntc, celsius);
        }
    }

    /**
     * A thermistor and a fixed resistor across the converter's reference; takes the part of the reference, 0 to 1.
     *
     * @param fixedToleranceFraction how far the fixed resistor may be off, plus or minus, as a fraction
     */
    record DividedThermistor(Ntc ntc, Divider divider, double expandedRatio, double fixedToleranceFraction)
            implements Thermometer {
        @Override
        public Conversion convert(double ratio, double junctionCelsius) {
            double ohms = divider.ohms(ratio);
            double expandedOhms = divider.expandedOhms(ratio, expandedRatio, fixedToleranceFraction);
            return ntc.convert(ohms, expandedOhms);
        }

        @Override
        public double measuredAt(double celsius) {
            return divider.ratio(ohmsAt(ntc, celsius));
        }
    }

    /**
     * A platinum resistor and its leads; takes ohms.
     *
     * @param leadOhms of both leads together, taken off; 0 where four wires are measured
     */
    record Resistor(Platinum platinum, double leadOhms, double expandedOhms) implements Thermometer {
        @Override
        public Conversion convert(double ohms, double junctionCelsius) {
            return platinum.convert(ohms - leadOhms, expandedOhms);
        }

        @Override
        public double measuredAt(double celsius) {
            return platinum.nominal().ohms(celsius) + leadOhms;
        }
    }

    /**
     * A thermocouple; takes millivolts.
     *
     * @param expandedJunctionKelvin uncertainty of the terminals' temperature
     */
    record Thermocouple(
            org.ebbwatch.rig.sensor.Thermocouple couple, double expandedMillivolts, double expandedJunctionKelvin)
            implements Thermometer {
        @Override
        public Conversion convert(double millivolts, double junctionCelsius) {
            return couple.convert(millivolts, expandedMillivolts, junctionCelsius, expandedJunctionKelvin);
        }

        @Override
        public double measuredAt(double celsius) {
            return couple.type().millivolts(celsius) - couple.type().millivolts(USUAL_TERMINALS_CELSIUS);
        }
    }

    /** A sensor of so many millivolts a kelvin; takes millivolts. */
    record Line(LinearSensor sensor, double expandedMillivolts) implements Thermometer {
        @Override
        public Conversion convert(double millivolts, double junctionCelsius) {
            return sensor.convert(millivolts, expandedMillivolts);
        }

        @Override
        public double measuredAt(double celsius) {
            return sensor.millivoltsAtZero() + sensor.millivoltsPerKelvin() * celsius;
        }
    }

    /** A 1-Wire sensor; takes degrees Celsius as its driver gives them. */
    record Digital(OneWire sensor) implements Thermometer {
        @Override
        public Conversion convert(double celsius, double junctionCelsius) {
            return sensor.convert(celsius);
        }

        @Override
        public double measuredAt(double celsius) {
            return celsius;
        }
    }
}
