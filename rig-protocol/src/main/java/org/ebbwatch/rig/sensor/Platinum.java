package org.ebbwatch.rig.sensor;

/**
 * A platinum resistor, -200 to 850 degrees Celsius. Source: IEC 60751 (reference function
 * R = R0 (1 + A t + B t^2 + C (t - 100) t^3), the last term below 0 degrees only; tolerance classes).
 *
 * @param nominal its ohms at 0 degrees Celsius
 * @param tolerance the class the sensor was made to
 */
public record Platinum(Nominal nominal, Tolerance tolerance) {
    /** Lowest temperature of the reference function, degrees Celsius. */
    public static final double LOWEST_CELSIUS = -200;
    /** Highest temperature of the reference function, degrees Celsius. */
    public static final double HIGHEST_CELSIUS = 850;

    private static final double A = 3.9083e-3;
    private static final double B = -5.775e-7;
    private static final double C = -4.183e-12;
    private static final double LOWEST_RATIO = ratio(LOWEST_CELSIUS);
    private static final double HIGHEST_RATIO = ratio(HIGHEST_CELSIUS);
    private static final int NEWTON_STEPS = 6;

    /** The usual resistors. */
    public enum Nominal {
        /** 100 ohms at 0 degrees Celsius. */
        PT100(100),
        /** 1000 ohms at 0 degrees Celsius. */
        PT1000(1_000);

        private final double ohmsAtZero;

        Nominal(double ohmsAtZero) {
            this.ohmsAtZero = ohmsAtZero;
        }

        /**
         * Ohms at a temperature.
         *
         * @throws IllegalArgumentException outside -200 to 850 degrees Celsius
         */
        public double ohms(double celsius) {
            if (!(celsius >= LOWEST_CELSIUS && celsius <= HIGHEST_CELSIUS)) {
                throw new IllegalArgumentException(celsius + " degrees Celsius, allowed is -200 to 850");
            }
            return ohmsAtZero * ratio(celsius);
        }
    }

    /** How far a sensor of a class may be off. The slopes are from memory, the class names and offsets IEC 60751. */
    public enum Tolerance {
        /** Plus or minus (0.15 + 0.002 |t|) kelvin. */
        A(0.15, 0.002),
        /** Plus or minus (0.30 + 0.005 |t|) kelvin. */
        B(0.30, 0.005);

        private final double kelvinAtZero;
        private final double kelvinPerKelvin;

        Tolerance(double kelvinAtZero, double kelvinPerKelvin) {
            this.kelvinAtZero = kelvinAtZero;
            this.kelvinPerKelvin = kelvinPerKelvin;
        }

        /** Half-width of the class at a temperature, kelvin. */
        public double kelvin(double celsius) {
            return kelvinAtZero + kelvinPerKelvin * Math.abs(celsius);
        }
    }

    /**
     * The temperature of so many ohms; fewer than at -200 degrees are a short, more than at 850 open.
     *
     * @param ohms of the sensor alone, the leads taken off
     * @param expandedOhms expanded uncertainty (k = 2) of those ohms
     */
    public Conversion convert(double ohms, double expandedOhms) {
        Uncertainty.require("expandedOhms", expandedOhms);
        if (Double.isNaN(ohms)) {
            return Conversion.Fault.NOT_A_NUMBER;
        }
        double ratio = ohms / nominal.ohmsAtZero;
        if (ratio < LOWEST_RATIO) {
            return Conversion.Fault.SHORT;
        }
        if (ratio > HIGHEST_RATIO) {
            return Conversion.Fault.OPEN;
        }
        double celsius = celsius(ratio);
        double expanded = Uncertainty.expanded(
                Uncertainty.rectangular(tolerance.kelvin(celsius)),
                Uncertainty.standard(expandedOhms) / (nominal.ohmsAtZero * ratioPerKelvin(celsius)));
        return new Conversion.Celsius(celsius, expanded);
    }

    private static double celsius(double ratio) {
        double root = StrictMath.sqrt(A * A - 4 * B * (1 - ratio));
        double celsius = (-A + root) / (2 * B);
        if (ratio < 1) {
            for (int i = 0; i < NEWTON_STEPS; i++) {
                celsius -= (ratio(celsius) - ratio) / ratioPerKelvin(celsius);
            }
        }
        return celsius;
    }

    private static double ratio(double t) {
        double ratio = 1 + A * t + B * t * t;
        return t < 0 ? ratio + C * (t - 100) * t * t * t : ratio;
    }

    private static double ratioPerKelvin(double t) {
        double slope = A + 2 * B * t;
        return t < 0 ? slope + C * t * t * (4 * t - 300) : slope;
    }
}
