package org.ebbwatch.judge.estimate;

import java.util.Optional;

/**
 * The time constant with which a temperature falls toward its surroundings, and how sure it is. Newton's law: the excess
 * falls as exp(-t / tau), so its logarithm is a line of slope -1 / tau. The slope is {@link RobustSlope}'s.
 *
 * <p>A sensor in air cools with some 15 s (a thermistor's data sheet: 12 s), a cell with 390 s or more (recordings of 18650
 * cells in still air: 778 s and 1200 s). Only readings whose excess stands well out of the noise tell.
 *
 * @param seconds tau
 * @param leastSeconds lower end of its 95 % interval
 * @param mostSeconds upper end; infinite where the temperature may as well not fall
 */
public record CoolingTime(double seconds, double leastSeconds, double mostSeconds) {
    private static final double LEAST_EXCESS = 4;

    /**
     * From the excess of the last {@code spanMillis}; empty where it does not fall, or too little of it stands out.
     *
     * @param deviationKelvin standard deviation of the noise of one excess
     */
    public static Optional<CoolingTime> of(Trail excess, long spanMillis, double deviationKelvin) {
        int within = excess.sizeWithin(spanMillis);
        var logarithms = new Trail(Math.max(1, within), 0);
        double least = LEAST_EXCESS * deviationKelvin;
        for (int step = within; step >= 1; step--) {
            if (excess.reading(step) > least) {
                logarithms.add(excess.millis(step), StrictMath.log(excess.reading(step)));
            }
        }
        return RobustSlope.of(logarithms, spanMillis)
                .filter(slope -> slope.perSecond() < 0)
                .map(slope -> new CoolingTime(
                        -1 / slope.perSecond(),
                        -1 / slope.lowestPerSecond(),
                        slope.highestPerSecond() < 0 ? -1 / slope.highestPerSecond() : Double.POSITIVE_INFINITY));
    }
}
