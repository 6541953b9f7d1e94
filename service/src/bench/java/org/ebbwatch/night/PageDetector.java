package org.ebbwatch.night;

import java.util.Arrays;
import java.util.Random;

/**
 * The ideal observer of a rise: Page's cumulative sum of the logarithm of the likelihood ratio, for a rise of known shape on
 * white normal noise of known deviation about a known level, with the onset unknown. For each possible onset it keeps the sum
 * of the likelihood ratio of "rising since then" against "level"; it tells when the largest reaches the threshold (E. S. Page,
 * Biometrika 1954, from memory). Onsets older than the shape is long are given up. Cost: one addition and multiplication a
 * scan and possible onset. For one thread.
 */
final class PageDetector {
    private static final int SPAN_MOST = 2_000;
    private static final int SPAN_LEAST = 8;
    private static final double SURE = 60;
    private static final int COUNTED = 100;
    private static final int SCANS_MOST = 500_000;

    private final double[] shape;
    private final double[] sums;
    private int scans;

    /** @param shape what a rise reads so many scans after its onset, in deviations of the noise */
    PageDetector(double[] shape) {
        this.shape = shape.clone();
        sums = new double[shape.length];
    }

    /**
     * A ramp through a sensor that lags: long enough for the ideal observer to be sure of it, at least eight scans.
     *
     * @param risePerScan in deviations of the noise
     * @param lagScans time constant of the sensor, 0 for none
     */
    static double[] ramp(double risePerScan, double lagScans) {
        double[] shape = new double[SPAN_MOST];
        double expected = 0;
        int span = 0;
        while (span < SPAN_MOST && (span < SPAN_LEAST || expected < SURE)) {
            double age = span + 0.5;
            double lagging = lagScans == 0 ? age : age - lagScans * (1 - StrictMath.exp(-age / lagScans));
            shape[span] = risePerScan * lagging;
            expected += shape[span] * shape[span] / 2;
            span++;
        }
        return Arrays.copyOf(shape, span);
    }

    /** Takes one reading, in deviations above the level; gives the largest sum. */
    double take(double reading) {
        int span = sums.length;
        int begins = scans % span;
        sums[begins] = 0;
        scans++;
        double most = 0;
        for (int age = 0; age < Math.min(scans, span); age++) {
            int onset = begins - age < 0 ? begins - age + span : begins - age;
            sums[onset] += shape[age] * reading - shape[age] * shape[age] / 2;
            most = Math.max(most, sums[onset]);
        }
        return most;
    }

    void restart() {
        Arrays.fill(sums, 0);
        scans = 0;
    }

    /**
     * The threshold at which it tells falsely once in so many scans. Rates are counted on noise alone where they are high
     * enough to count, and carried on by the exponential with which they fall.
     */
    static double thresholdFor(double[] shape, double scansPerFalse) {
        double low = 3;
        double high = 6;
        double lowRate = falseRate(shape, low);
        double highRate = falseRate(shape, high);
        double perUnit = (StrictMath.log(lowRate) - StrictMath.log(highRate)) / (high - low);
        return low + (StrictMath.log(lowRate) + StrictMath.log(scansPerFalse)) / perUnit;
    }

    private static double falseRate(double[] shape, double threshold) {
        PageDetector detector = new PageDetector(shape);
        Random noise = new Random(1);
        int found = 0;
        int scans = 0;
        while (found < COUNTED && scans < SCANS_MOST) {
            scans++;
            if (detector.take(noise.nextGaussian()) >= threshold) {
                found++;
                detector.restart();
            }
        }
        return (double) Math.max(1, found) / scans;
    }
}
