package org.ebbwatch.calibration;

import static java.util.Objects.requireNonNull;

/**
 * The meter a channel is calibrated against, with the accuracy its maker states for the range used: half-widths, such as
 * &plusmn;(0.5 % of the reading + 2 digits).
 *
 * @param name what a person calls it, 1 to 100 characters
 * @param share of the reading, 0 to 0.05
 * @param volts besides, digits times the volts of one digit, 0 to 0.05; not both are 0, for no meter is exact
 */
public record Meter(String name, double share, double volts) {
    /** Most of either: a meter worse than this calibrates nothing. */
    public static final double MOST = 0.05;

    private static final int LONGEST_NAME = 100;

    public Meter {
        requireNonNull(name);
        if (name.isBlank() || name.length() > LONGEST_NAME) {
            throw new IllegalArgumentException("a meter's name has 1 to 100 characters, not \"" + name + '"');
        }
        if (!(share >= 0 && share <= MOST && volts >= 0 && volts <= MOST && share + volts > 0)) {
            throw new IllegalArgumentException("a meter's accuracy is 0 to 5 % of the reading and 0 to 0.05 V, and not"
                    + " nothing at all; these are " + share + " and " + volts);
        }
    }

    /** Expanded uncertainty (k = 2) of what it shows; both half-widths are rectangular (JCGM 100, 4.3.7). */
    public double expandedVolts(double shown) {
        return 2 / StrictMath.sqrt(3) * StrictMath.hypot(share * shown, volts);
    }
}
