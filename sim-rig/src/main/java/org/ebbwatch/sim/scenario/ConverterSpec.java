package org.ebbwatch.sim.scenario;

/**
 * How a board measures. Each channel's offset and gain are drawn once, with half the stated uncertainty as standard deviation.
 *
 * @param unipolar reads 0 to 5 V; otherwise -0.5 to 5 V
 * @param voltsNoiseCounts standard deviation of a voltage reading, counts of 100 microvolts, 0 to 1000
 * @param celsiusNoiseCounts standard deviation of a temperature reading, counts of 0.02 K, 0 to 1000
 * @param offsetMicrovolts expanded (k = 2) uncertainty of the offset, 0 to 100000
 * @param gainPartsPerMillion expanded (k = 2) uncertainty of the gain, 0 to 100000
 * @param celsiusKelvin expanded (k = 2) uncertainty of a temperature, 0 to 10
 */
public record ConverterSpec(
        boolean unipolar,
        double voltsNoiseCounts,
        double celsiusNoiseCounts,
        double offsetMicrovolts,
        double gainPartsPerMillion,
        double celsiusKelvin) {
    /** Nanovolts per count of every simulated board. */
    public static final long NANOVOLTS_PER_COUNT = 100_000;
    /** Nanoamperes per count of every simulated board. */
    public static final long NANOAMPERES_PER_COUNT = 100_000;
    /** Microkelvin per count of every simulated board. */
    public static final long MICROKELVIN_PER_COUNT = 20_000;

    /** -0.5 to 5 V, one count of noise on volts, one and a half on temperature, 0.4 mV, 500 ppm, 0.3 K. */
    public static final ConverterSpec USUAL = new ConverterSpec(false, 1, 1.5, 400, 500, 0.3);

    public ConverterSpec {
        Ranges.within("voltsNoiseCounts", voltsNoiseCounts, 0, 1000);
        Ranges.within("celsiusNoiseCounts", celsiusNoiseCounts, 0, 1000);
        Ranges.within("offsetMicrovolts", offsetMicrovolts, 0, 100_000);
        Ranges.within("gainPartsPerMillion", gainPartsPerMillion, 0, 100_000);
        Ranges.within("celsiusKelvin", celsiusKelvin, 0, 10);
    }

    /** The same, unable to read below 0 V. */
    public ConverterSpec asUnipolar() {
        return new ConverterSpec(
                true, voltsNoiseCounts, celsiusNoiseCounts, offsetMicrovolts, gainPartsPerMillion, celsiusKelvin);
    }

    /** Lowest count it can give. */
    public int lowestCounts() {
        return unipolar ? 0 : -5_000;
    }

    /** Highest count it can give. */
    public int highestCounts() {
        return 50_000;
    }
}
