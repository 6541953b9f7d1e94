package org.ebbwatch.rig.sensor;

/**
 * The curve of a thermistor that falls as it warms: 1/T = a + b x + c x^2 + d x^3 with x = ln(R / reference) and T in
 * kelvin. The beta formula is the case c = d = 0, that of Steinhart and Hart the case reference = 1 ohm and c = 0.
 *
 * @param referenceOhms ohms that x counts from
 * @param a per kelvin
 * @param b per kelvin
 * @param c per kelvin
 * @param d per kelvin
 * @param lowestOhms ohms at the hot end of the curve's range; fewer are a short
 * @param highestOhms ohms at the cold end; more are an open sensor
 * @param errorKelvin the most the curve strays from the part it stands for, over that range
 */
public record NtcCurve(
        double referenceOhms,
        double a,
        double b,
        double c,
        double d,
        double lowestOhms,
        double highestOhms,
        double errorKelvin) {
    private static final double ZERO_CELSIUS_KELVIN = 273.15;
    private static final int BISECTIONS = 60;

    /** One line of a table of a thermistor. */
    public record Point(double celsius, double ohms) {
        double kelvin() {
            return celsius + ZERO_CELSIUS_KELVIN;
        }
    }

    public NtcCurve {
        if (!(referenceOhms > 0 && lowestOhms > 0 && highestOhms > lowestOhms && Double.isFinite(highestOhms))) {
            throw new IllegalArgumentException("ohms must be above 0 and lowestOhms below highestOhms");
        }
        Uncertainty.require("errorKelvin", errorKelvin);
        double cold = StrictMath.log(highestOhms / referenceOhms);
        double hot = StrictMath.log(lowestOhms / referenceOhms);
        double turn = d == 0 ? hot : Math.min(cold, Math.max(hot, -c / (3 * d)));
        for (double x : new double[] {cold, hot, turn}) {
            if (!(slope(x, b, c, d) > 0 && inverseKelvin(x, a, b, c, d) > 0)) {
                throw new IllegalArgumentException("the curve does not rise steadily from hot to cold over its range");
            }
        }
    }

    /**
     * The beta formula, 1/T = 1/T0 + ln(R/R0) / beta. Good near its two temperatures, off by kelvins far from them: state by
     * how much in {@code errorKelvin}.
     */
    public static NtcCurve beta(
            Point reference, double betaKelvin, double lowestOhms, double highestOhms, double errorKelvin) {
        return new NtcCurve(
                reference.ohms(), 1 / reference.kelvin(), 1 / betaKelvin, 0, 0, lowestOhms, highestOhms, errorKelvin);
    }

    /** The formula of Steinhart and Hart, 1/T = A + B ln R + C (ln R)^3 with R in ohms. */
    public static NtcCurve steinhartHart(
            double a, double b, double c, double lowestOhms, double highestOhms, double errorKelvin) {
        return new NtcCurve(1, a, b, 0, c, lowestOhms, highestOhms, errorKelvin);
    }

    /** The curve of Steinhart and Hart through three points of a table. */
    public static NtcCurve through(
            Point cold, Point middle, Point hot, double lowestOhms, double highestOhms, double errorKelvin) {
        double l1 = StrictMath.log(cold.ohms());
        double l2 = StrictMath.log(middle.ohms());
        double l3 = StrictMath.log(hot.ohms());
        double y1 = 1 / cold.kelvin();
        double g2 = (1 / middle.kelvin() - y1) / (l2 - l1);
        double g3 = (1 / hot.kelvin() - y1) / (l3 - l1);
        double c = (g3 - g2) / (l3 - l2) / (l1 + l2 + l3);
        double b = g2 - c * (l1 * l1 + l1 * l2 + l2 * l2);
        double a = y1 - (b + l1 * l1 * c) * l1;
        return steinhartHart(a, b, c, lowestOhms, highestOhms, errorKelvin);
    }

    /**
     * The same curve over a narrower range.
     *
     * @throws IllegalArgumentException if the range is empty or not within this curve's
     */
    public NtcCurve within(double lowestCelsius, double highestCelsius) {
        return new NtcCurve(referenceOhms, a, b, c, d, ohms(highestCelsius), ohms(lowestCelsius), errorKelvin);
    }

    /**
     * Degrees Celsius of so many ohms.
     *
     * @throws IllegalArgumentException outside the curve's range
     */
    public double celsius(double ohms) {
        if (!(ohms >= lowestOhms && ohms <= highestOhms)) {
            throw new IllegalArgumentException(ohms + " ohms, allowed is " + lowestOhms + " to " + highestOhms);
        }
        return celsiusAt(x(ohms));
    }

    /**
     * Ohms at a temperature: the other way, for models and tables.
     *
     * @throws IllegalArgumentException outside the curve's range
     */
    public double ohms(double celsius) {
        double hot = x(lowestOhms);
        double cold = x(highestOhms);
        if (!reaches(celsius)) {
            throw new IllegalArgumentException(
                    celsius + " degrees Celsius, allowed is " + celsiusAt(cold) + " to " + celsiusAt(hot));
        }
        for (int i = 0; i < BISECTIONS; i++) {
            double middle = (hot + cold) / 2;
            if (celsiusAt(middle) > celsius) {
                hot = middle;
            } else {
                cold = middle;
            }
        }
        return referenceOhms * StrictMath.exp((hot + cold) / 2);
    }

    /** Whether a temperature lies within the curve's range. */
    public boolean reaches(double celsius) {
        return celsius >= celsiusAt(x(highestOhms)) && celsius <= celsiusAt(x(lowestOhms));
    }

    /** By how many kelvins the temperature falls when the ohms grow by the factor e; above 0. */
    double kelvinPerLogOhms(double ohms) {
        double kelvin = 1 / inverseKelvin(x(ohms), a, b, c, d);
        return kelvin * kelvin * slope(x(ohms), b, c, d);
    }

    private double celsiusAt(double x) {
        return 1 / inverseKelvin(x, a, b, c, d) - ZERO_CELSIUS_KELVIN;
    }

    private double x(double ohms) {
        return StrictMath.log(ohms / referenceOhms);
    }

    private static double inverseKelvin(double x, double a, double b, double c, double d) {
        return a + x * (b + x * (c + x * d));
    }

    private static double slope(double x, double b, double c, double d) {
        return b + x * (2 * c + x * 3 * d);
    }
}
