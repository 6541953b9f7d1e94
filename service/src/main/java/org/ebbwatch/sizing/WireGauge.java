package org.ebbwatch.sizing;

import java.util.Arrays;
import java.util.Optional;

/**
 * Copper hook-up wire by its American gauge number, whose diameters are defined (ASTM B258): 0.127 mm times 92 to the power of
 * (36 - n)/39.
 *
 * <p>Currents: rule of thumb for bundled wire, from memory; 24 and thinner scaled down with the copper.
 */
public enum WireGauge {
    AWG_18(18, 7),
    AWG_20(20, 5),
    AWG_22(22, 3),
    AWG_24(24, 1.9),
    AWG_26(26, 1.2),
    AWG_28(28, 0.7);

    private static final double OHM_METRES = 1.7241e-8;

    private final int number;
    private final double mayCarryAmperes;

    WireGauge(int number, double mayCarryAmperes) {
        this.number = number;
        this.mayCarryAmperes = mayCarryAmperes;
    }

    /** Its number. */
    public int number() {
        return number;
    }

    /** What it may carry all the time. */
    public double mayCarryAmperes() {
        return mayCarryAmperes;
    }

    /** Resistance of a metre at 20 degrees Celsius (annealed copper standard, 1.7241e-8 ohm metres). */
    public double ohmsPerMetre() {
        double metres = 0.000127 * StrictMath.pow(92, (36 - number) / 39.0);
        return OHM_METRES / (Math.PI / 4 * metres * metres);
    }

    /** AWG 22, which does not break off at once, or thicker where the current asks for it; empty where even the thickest is too thin. */
    public static Optional<WireGauge> enoughFor(double amperes) {
        return Arrays.stream(values())
                .filter(gauge -> gauge.number <= AWG_22.number && gauge.mayCarryAmperes >= amperes)
                .reduce((thick, thinner) -> thinner);
    }

    /** The gauge of that number; empty where none is. */
    public static Optional<WireGauge> ofNumber(int number) {
        return Arrays.stream(values()).filter(gauge -> gauge.number == number).findFirst();
    }
}
