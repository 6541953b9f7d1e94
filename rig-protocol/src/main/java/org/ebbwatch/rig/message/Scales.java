package org.ebbwatch.rig.message;

/**
 * How many units one count of a board stands for. Zero counts are 0 V, 0 A and 0 degrees Celsius.
 *
 * @param nanovoltsPerCount u32, 0 only on a board without volts
 * @param nanoamperesPerCount u32, 0 only on a board without amperes
 * @param microkelvinPerCount u32, 0 only on a board without temperatures
 */
public record Scales(long nanovoltsPerCount, long nanoamperesPerCount, long microkelvinPerCount) {
    public Scales {
        Bounds.u32("nanovoltsPerCount", nanovoltsPerCount);
        Bounds.u32("nanoamperesPerCount", nanoamperesPerCount);
        Bounds.u32("microkelvinPerCount", microkelvinPerCount);
    }

    /** Volts of so many counts; the product is exact, so one count gives the same double on every machine. */
    public double volts(int counts) {
        return counts * nanovoltsPerCount / 1e9;
    }

    /** Amperes of so many counts, discharge positive. */
    public double amperes(int counts) {
        return counts * nanoamperesPerCount / 1e9;
    }

    /** Degrees Celsius of so many counts. */
    public double celsius(int counts) {
        return counts * microkelvinPerCount / 1e6;
    }
}
