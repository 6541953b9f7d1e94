package org.ebbwatch.rig.sensor;

/**
 * The reference functions of the thermocouple types: millivolts by degrees Celsius, one polynomial below and one above 0
 * degrees, coefficients from the constant up. Source: NIST ITS-90 thermocouple database (SRD 60, after Monograph 175),
 * public domain.
 */
final class ReferenceFunctions {
    private static final double[] K_BELOW_ZERO = {
        0.0,
        0.039450128025,
        2.3622373598e-05,
        -3.2858906784e-07,
        -4.9904828777e-09,
        -6.7509059173e-11,
        -5.7410327428e-13,
        -3.1088872894e-15,
        -1.0451609365e-17,
        -1.9889266878e-20,
        -1.6322697486e-23
    };
    private static final double[] K_ABOVE_ZERO = {
        -0.017600413686,
        0.038921204975,
        1.8558770032e-05,
        -9.9457592874e-08,
        3.1840945719e-10,
        -5.6072844889e-13,
        5.6075059059e-16,
        -3.2020720003e-19,
        9.7151147152e-23,
        -1.2104721275e-26
    };
    private static final double[] T_BELOW_ZERO = {
        0.0,
        0.038748106364,
        4.4194434347e-05,
        1.1844323105e-07,
        2.0032973554e-08,
        9.0138019559e-10,
        2.2651156593e-11,
        3.6071154205e-13,
        3.8493939883e-15,
        2.8213521925e-17,
        1.4251594779e-19,
        4.8768662286e-22,
        1.079553927e-24,
        1.3945027062e-27,
        7.9795153927e-31
    };
    private static final double[] T_ABOVE_ZERO = {
        0.0,
        0.038748106364,
        3.329222788e-05,
        2.0618243404e-07,
        -2.1882256846e-09,
        1.0996880928e-11,
        -3.0815758772e-14,
        4.547913529e-17,
        -2.7512901673e-20
    };

    private static final double K_BELL_MILLIVOLTS = 0.1185976;
    private static final double K_BELL_PER_SQUARE_KELVIN = -0.0001183432;
    private static final double K_BELL_CENTRE = 126.9686;

    private ReferenceFunctions() {}

    static double millivolts(ThermocoupleType type, double t) {
        double sum = 0;
        double[] coefficients = coefficients(type, t);
        for (int i = coefficients.length - 1; i >= 0; i--) {
            sum = sum * t + coefficients[i];
        }
        return sum + bell(type, t);
    }

    static double millivoltsPerKelvin(ThermocoupleType type, double t) {
        double sum = 0;
        double[] coefficients = coefficients(type, t);
        for (int i = coefficients.length - 1; i >= 1; i--) {
            sum = sum * t + i * coefficients[i];
        }
        return sum + bell(type, t) * 2 * K_BELL_PER_SQUARE_KELVIN * (t - K_BELL_CENTRE);
    }

    private static double[] coefficients(ThermocoupleType type, double t) {
        return switch (type) {
            case K -> t < 0 ? K_BELOW_ZERO : K_ABOVE_ZERO;
            case T -> t < 0 ? T_BELOW_ZERO : T_ABOVE_ZERO;
        };
    }

    private static double bell(ThermocoupleType type, double t) {
        if (type != ThermocoupleType.K || t < 0) {
            return 0;
        }
        double off = t - K_BELL_CENTRE;
        return K_BELL_MILLIVOLTS * StrictMath.exp(K_BELL_PER_SQUARE_KELVIN * off * off);
    }
}
