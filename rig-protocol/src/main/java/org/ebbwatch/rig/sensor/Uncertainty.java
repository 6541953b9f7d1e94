package org.ebbwatch.rig.sensor;

/** The arithmetic of an uncertainty budget: independent contributions, expanded with k = 2. Source: JCGM 100. */
final class Uncertainty {
    private static final double COVERAGE = 2.0;

    private Uncertainty() {}

    /** Standard uncertainty of a value known to lie within plus or minus the half-width, all of it equally likely. */
    static double rectangular(double halfWidth) {
        return halfWidth / StrictMath.sqrt(3);
    }

    /** Standard uncertainty behind an expanded one. */
    static double standard(double expanded) {
        return expanded / COVERAGE;
    }

    /** Expanded uncertainty of the sum of independent standard ones. */
    static double expanded(double... standard) {
        double squares = 0;
        for (double one : standard) {
            squares += one * one;
        }
        return COVERAGE * StrictMath.sqrt(squares);
    }

    /** Refuses what cannot be an uncertainty or a tolerance. */
    static void require(String name, double amount) {
        if (!(amount >= 0) || Double.isInfinite(amount)) {
            throw new IllegalArgumentException(name + " is " + amount + ", allowed is 0 or more");
        }
    }
}
