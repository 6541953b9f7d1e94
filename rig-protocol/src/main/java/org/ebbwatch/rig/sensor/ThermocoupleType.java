package org.ebbwatch.rig.sensor;

/**
 * The thermocouple types a rack uses. The temperature is found by halving an interval of the reference function itself, so it
 * has none of the error of the usual inverse polynomials. Source: NIST ITS-90 thermocouple database (SRD 60).
 */
public enum ThermocoupleType {
    /** Nickel-chromium against nickel-aluminium, -200 to 1372 degrees Celsius. */
    K(1372),
    /** Copper against copper-nickel, -200 to 400 degrees Celsius. */
    T(400);

    /** Lowest temperature of either type here, degrees Celsius. */
    public static final double LOWEST_CELSIUS = -200;

    private static final int BISECTIONS = 50;

    private final double highestCelsius;

    ThermocoupleType(double highestCelsius) {
        this.highestCelsius = highestCelsius;
    }

    /** Highest temperature of the type, degrees Celsius. */
    public double highestCelsius() {
        return highestCelsius;
    }

    /**
     * Millivolts of a couple at this temperature whose other junction is at 0 degrees Celsius.
     *
     * @throws IllegalArgumentException outside the type's range
     */
    public double millivolts(double celsius) {
        if (!(celsius >= LOWEST_CELSIUS && celsius <= highestCelsius)) {
            throw new IllegalArgumentException(
                    celsius + " degrees Celsius, allowed is " + LOWEST_CELSIUS + " to " + highestCelsius);
        }
        return ReferenceFunctions.millivolts(this, celsius);
    }

    /**
     * The temperature at which a couple gives so many millivolts, its other junction at 0 degrees Celsius.
     *
     * @throws IllegalArgumentException outside the type's range
     */
    public double celsius(double millivolts) {
        double cold = LOWEST_CELSIUS;
        double hot = highestCelsius;
        if (!(millivolts >= millivolts(cold) && millivolts <= millivolts(hot))) {
            throw new IllegalArgumentException(
                    millivolts + " mV, allowed is " + millivolts(cold) + " to " + millivolts(hot));
        }
        for (int i = 0; i < BISECTIONS; i++) {
            double middle = (cold + hot) / 2;
            if (millivolts(middle) > millivolts) {
                hot = middle;
            } else {
                cold = middle;
            }
        }
        return (cold + hot) / 2;
    }

    /** Millivolts per kelvin at a temperature within the type's range. */
    double millivoltsPerKelvin(double celsius) {
        return ReferenceFunctions.millivoltsPerKelvin(this, celsius);
    }
}
