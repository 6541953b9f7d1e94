package org.ebbwatch.judge.estimate;

import java.util.Arrays;
import java.util.Optional;

/**
 * The slope of a noisy quantity and how sure it is: the median of the slopes between all pairs of readings (Theil 1950, Sen
 * 1968), with Sen's interval from the deviation of Kendall's tau. Up to 29 % of the readings may be wild.
 *
 * <p>Holds nothing; one call sorts some 500 slopes (a few tens of microseconds): for the moment something hangs on it, not
 * for every reading.
 *
 * @param perSecond the slope
 * @param lowestPerSecond lower end of its 95 % interval
 * @param highestPerSecond upper end
 */
public record RobustSlope(double perSecond, double lowestPerSecond, double highestPerSecond) {
    private static final double NORMAL_95 = 1.96;
    private static final int MOST_READINGS = 32;
    private static final int LEAST_READINGS = 8;

    /** Over the readings of the last {@code spanMillis}; empty with fewer than eight of them. */
    public static Optional<RobustSlope> of(Trail trail, long spanMillis) {
        int within = trail.sizeWithin(spanMillis);
        if (within < LEAST_READINGS) {
            return Optional.empty();
        }
        int stride = (within + MOST_READINGS - 1) / MOST_READINGS;
        int count = (within - 1) / stride + 1;
        double[] slopes = new double[count * (count - 1) / 2];
        int filled = 0;
        for (int late = 1; late <= within; late += stride) {
            for (int early = late + stride; early <= within; early += stride) {
                double seconds = (trail.millis(late) - trail.millis(early)) / 1000.0;
                slopes[filled++] = (trail.reading(late) - trail.reading(early)) / seconds;
            }
        }
        Arrays.sort(slopes);
        double deviation = StrictMath.sqrt(count * (count - 1.0) * (2.0 * count + 5) / 18);
        double half = NORMAL_95 * deviation / 2;
        double middle = (filled - 1) / 2.0;
        return Optional.of(new RobustSlope(
                at(slopes, middle),
                at(slopes, Math.max(0, middle - half)),
                at(slopes, Math.min(filled - 1, middle + half))));
    }

    /** Between two places of a sorted row. */
    private static double at(double[] sorted, double place) {
        int below = (int) place;
        int above = Math.min(below + 1, sorted.length - 1);
        return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
    }
}
