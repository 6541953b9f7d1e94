package org.ebbwatch.night;

import java.util.Arrays;
import java.util.Random;

/**
 * The ideal observer of a rise: Page's cumulative sum of the logarithm of the likelihood ratio, for a ramp of known slope on
 * white normal noise of known deviation about a known level, with the onset unknown. For each possible onset it keeps the sum
 * of the likelihood ratio of "rising since then" against "level"; it tells when the largest reaches the threshold (E. S. Page,
 * Biometrika 1954, from memory). Onsets older than {@code span} scans are given up. Cost: one addition and multiplication a
 * scan and possible onset. For one thread.
 */
final class PageDetector {
    private static final int COUNTED = 100;
    private static final int SCANS_MOST = 500_000;

    private final double[] shape;
    private final double[] sums;
    private int scans;

    /** @param risePerScan in deviations of the noise */
    PageDetector(double risePerScan, int span) {
        shape = new double[span];
        for (int age = 0; age < span; age++) {
            shape[age] = risePerScan * (age + 1);
        }
        sums = new double[span];
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
    static double thresholdFor(double risePerScan, int span, double scansPerFalse) {
        double low = 3;
        double high = 6;
        double lowRate = falseRate(risePerScan, span, low);
        double highRate = falseRate(risePerScan, span, high);
        double perUnit = (StrictMath.log(lowRate) - StrictMath.log(highRate)) / (high - low);
        return low + (StrictMath.log(lowRate) + StrictMath.log(scansPerFalse)) / perUnit;
    }

    private static double falseRate(double risePerScan, int span, double threshold) {
        PageDetector detector = new PageDetector(risePerScan, span);
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
