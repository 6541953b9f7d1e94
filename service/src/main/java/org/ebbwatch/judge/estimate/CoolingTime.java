package org.ebbwatch.judge.estimate;

/**
 * The time constant with which a temperature falls toward its surroundings, and how sure it is. Newton's law: the excess
 * falls as exp(-t / tau), so tau is the time between two readings over the logarithm of their ratio; the noise of both gives
 * the interval (JCGM 100, 5.1.2).
 *
 * <p>A sensor in air cools with some 15 s (a thermistor's data sheet: 12 s), a cell with 390 s or more (recordings of 18650
 * cells in still air: 778 s and 1200 s).
 *
 * @param seconds tau; infinite where nothing fell
 * @param leastSeconds lower end of its 95 % interval
 * @param mostSeconds upper end; infinite where the temperature may as well not fall
 */
public record CoolingTime(double seconds, double leastSeconds, double mostSeconds) {
    private static final double NORMAL_95 = 1.96;

    /**
     * From two excesses over the surroundings.
     *
     * @param beforeKelvin above 0
     * @param nowKelvin where at most the noise is left of it, the noise stands for it
     * @param seconds between them
     * @param deviationKelvin standard deviation of the noise of one excess, above 0
     */
    public static CoolingTime between(double beforeKelvin, double nowKelvin, double seconds, double deviationKelvin) {
        double left = Math.max(nowKelvin, deviationKelvin);
        double rate = StrictMath.log(beforeKelvin / left) / seconds;
        double doubt = NORMAL_95 * deviationKelvin * StrictMath.hypot(1 / beforeKelvin, 1 / left) / seconds;
        return new CoolingTime(time(rate), time(rate + doubt), time(rate - doubt));
    }

    private static double time(double rate) {
        return rate > 0 ? 1 / rate : Double.POSITIVE_INFINITY;
    }
}
