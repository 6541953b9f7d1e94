package org.ebbwatch.judge.estimate;

import java.util.Arrays;
import java.util.Random;

/**
 * Page's test (Page, Biometrika 1954 41 100) of an observer who knows the level before, the noise and the slope of the ramp,
 * and has only to find out whether and when it began: the largest log likelihood ratio over all moments in the past.
 */
final class IdealObserver {
    private static final int MEMORY = 150;

    private final double slope;
    private final double deviation;
    private final double[] readings = new double[MEMORY];
    private int next;
    private double evidence;

    IdealObserver(double slopePerReading, double deviation) {
        this.slope = slopePerReading;
        this.deviation = deviation;
    }

    /** Takes one reading above the level before. */
    void add(double above) {
        readings[next] = above;
        next = (next + 1) % MEMORY;
        evidence = 0;
        double sum = 0;
        double rise = 0;
        double squares = 0;
        int place = next;
        for (int ramp = 1; ramp <= MEMORY; ramp++) {
            place = place == 0 ? MEMORY - 1 : place - 1;
            sum += readings[place];
            rise += sum;
            squares += (double) ramp * ramp;
            evidence = Math.max(evidence, slope / deviation / deviation * (rise - slope / 2 * squares));
        }
    }

    double evidence() {
        return evidence;
    }

    /** The bound that noise crosses once in so many readings: measured at two lower ones and carried on as exp(bound). */
    double boundFor(double readingsPerAlarm, Random random, int measured) {
        double[] bounds = {5, 7};
        int[] alarms = new int[2];
        boolean[] over = new boolean[2];
        for (int reading = 0; reading < measured; reading++) {
            add(deviation * random.nextGaussian());
            for (int place = 0; place < 2; place++) {
                boolean crossed = evidence > bounds[place];
                alarms[place] += crossed && !over[place] ? 1 : 0;
                over[place] = crossed || (over[place] && evidence > 0);
            }
        }
        double growth = Math.log((double) alarms[0] / alarms[1]) / (bounds[1] - bounds[0]);
        return bounds[1] + Math.log(readingsPerAlarm * alarms[1] / measured) / growth;
    }

    /** Readings from the beginning of a ramp to the alarm, in the median. */
    double medianDelay(double bound, Random random, int runs) {
        double[] delays = new double[runs];
        for (int run = 0; run < runs; run++) {
            Arrays.fill(readings, 0);
            for (int reading = 0; reading < MEMORY; reading++) {
                add(deviation * random.nextGaussian());
            }
            int ramp = 0;
            while (evidence <= bound) {
                ramp++;
                add(slope * ramp + deviation * random.nextGaussian());
            }
            delays[run] = ramp;
        }
        Arrays.sort(delays);
        return delays[runs / 2];
    }
}
