package org.ebbwatch.rig.sensor;

/** What a sensor's electrical value comes to: a temperature with its uncertainty, or a fault that is no temperature. */
public sealed interface Conversion {
    /**
     * A temperature.
     *
     * @param celsius degrees Celsius (ITS-90)
     * @param expandedCelsius expanded uncertainty (k = 2), kelvin
     */
    record Celsius(double celsius, double expandedCelsius) implements Conversion {}

    /** Why there is no temperature. */
    enum Fault implements Conversion {
        /** The sensor or its lead is open. An open thermistor would otherwise read as the coldest of temperatures. */
        OPEN,
        /** The sensor or its lead is shorted. */
        SHORT,
        /** The value belongs to no temperature in the sensor's range. */
        OUT_OF_RANGE,
        /** A digital sensor has not measured since it was switched on. */
        NOT_MEASURED,
        /** The value is not a number. */
        NOT_A_NUMBER
    }
}
