package org.ebbwatch.judge.estimate;

/**
 * Standard deviation of the noise of a slowly changing quantity, from the differences of neighbouring readings.
 *
 * <p>The variance of white noise is half the mean square of first differences (von Neumann 1941, from memory). Steps are
 * clipped at three deviations so that a load switching does not count as noise. The first {@value #FIRST} differences weigh more than later
 * ones, so that a noisy channel is known as such after as many readings. Never below the quantisation noise of one count,
 * q / sqrt(12). Constant memory: three numbers.
 */
public final class NoiseMeter {
    private static final int MEMORY = 64;
    private static final int FIRST = 15;

    private double variance;
    private double previous = Double.NaN;
    private int differences;

    /** Takes one reading; NaN breaks the chain of differences. */
    public void add(double reading, double resolution) {
        double difference = reading - previous;
        previous = reading;
        double floor = resolution * resolution / 12;
        if (Double.isNaN(difference)) {
            return;
        }
        double known = Math.max(variance, floor);
        differences = differences < FIRST ? differences + 1 : MEMORY;
        double seen = Math.min(difference * difference / 2, 9 * known);
        variance = known + (seen - known) / differences;
    }

    /** A step follows that is no noise. */
    public void interrupt() {
        previous = Double.NaN;
    }

    /** Standard deviation of one reading, at least that of a count of {@code resolution}. */
    public double deviation(double resolution) {
        return StrictMath.sqrt(Math.max(variance, resolution * resolution / 12));
    }

    /** Expanded uncertainty (k = 2) of the difference of two readings. */
    public double expandedDifference(double resolution) {
        return 2 * StrictMath.sqrt(2) * deviation(resolution);
    }
}
