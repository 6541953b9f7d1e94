package org.ebbwatch.night;

import java.util.List;
import java.util.Random;

/** Random draws of one night: the same seed gives the same draws on every machine. For one thread. */
final class Dice {
    private final Random random;

    Dice(long seed) {
        random = new Random(seed * 0x9E37_79B9_7F4A_7C15L);
    }

    boolean chance(double probability) {
        return random.nextDouble() < probability;
    }

    double between(double lowest, double highest) {
        return lowest + (highest - lowest) * random.nextDouble();
    }

    /** Every factor as likely as any other. */
    double logBetween(double lowest, double highest) {
        return lowest * StrictMath.pow(highest / lowest, random.nextDouble());
    }

    long millis(double leastHours, double mostHours) {
        return Math.round(between(leastHours, mostHours) * 3.6e6);
    }

    double normal() {
        return random.nextGaussian();
    }

    <T> T pick(List<T> from) {
        return from.get(random.nextInt(from.size()));
    }
}
