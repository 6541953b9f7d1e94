package org.ebbwatch.sizing;

import static java.util.Objects.requireNonNull;

/**
 * A resistor as it lies in a drawer.
 *
 * @param ohms 0.01 to 100000
 * @param ratedWatts what is printed on it, 0.1 to 1000
 */
public record Resistor(double ohms, double ratedWatts, ResistorBuild build) {
    /** Least ohms. */
    public static final double LEAST_OHMS = 0.01;

    /** Most ohms. */
    public static final double MOST_OHMS = 100_000;

    /** Least rating. */
    public static final double LEAST_WATTS = 0.1;

    /** Highest rating. */
    public static final double MOST_WATTS = 1_000;

    public Resistor {
        requireNonNull(build);
        Ranges.require("ohms", ohms, LEAST_OHMS, MOST_OHMS);
        Ranges.require("watts", ratedWatts, LEAST_WATTS, MOST_WATTS);
    }

    /** As a person says it: "22 ohm, 10 W". */
    public String words() {
        return Ranges.plain(ohms) + " ohm " + Ranges.plain(ratedWatts) + " W";
    }
}
