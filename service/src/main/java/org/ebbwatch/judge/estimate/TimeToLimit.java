package org.ebbwatch.judge.estimate;

/**
 * When a falling voltage will be at its limit, as an interval.
 *
 * <p>Past the knee the fall of the last minutes goes on straight: the distance over the slope, with both ends of the slope's
 * interval. Before the knee the voltage says nothing and charge does: what is left over the present current. Both assume the
 * load as it is. A cell slows down on its way (its current falls with its voltage): the most is not a promise.
 *
 * @param leastMillis not sooner, with 97.5 % of the interval
 * @param expectedMillis most likely
 * @param mostMillis {@link #NEVER} where the slope may as well be none
 */
public record TimeToLimit(long leastMillis, long expectedMillis, long mostMillis) {
    /** So far away that nobody can say. */
    public static final long NEVER = Long.MAX_VALUE;

    private static final double MILLIS_PER_HOUR = 3.6e6;

    /** By the slope of the voltage, volts per second; all zero where the limit is passed. */
    public static TimeToLimit bySlope(double volts, double limitVolts, RobustSlope slope) {
        double distance = volts - limitVolts;
        return distance <= 0
                ? new TimeToLimit(0, 0, 0)
                : new TimeToLimit(
                        millis(distance, -slope.lowestPerSecond()),
                        millis(distance, -slope.perSecond()),
                        millis(distance, -slope.highestPerSecond()));
    }

    private static long millis(double distance, double fallPerSecond) {
        return fallPerSecond <= 0 ? NEVER : Math.round(Math.min(1e15, distance / fallPerSecond * 1000));
    }

    /**
     * By the charge that is left at most, least and most likely, over the present current.
     *
     * @param takenAmpereHours already out, its expanded uncertainty {@code expandedAmpereHours}
     * @param ratedAmpereHours what the label says; an old cell holds a part of that
     * @param leastShare of the rating at least, {@code likelyShare} most likely; at most all of it
     */
    public static TimeToLimit byCharge(
            double takenAmpereHours,
            double expandedAmpereHours,
            double ratedAmpereHours,
            double leastShare,
            double likelyShare,
            double amperes) {
        return new TimeToLimit(
                millisLeft(leastShare * ratedAmpereHours - takenAmpereHours - expandedAmpereHours, amperes),
                millisLeft(likelyShare * ratedAmpereHours - takenAmpereHours, amperes),
                millisLeft(ratedAmpereHours - takenAmpereHours + expandedAmpereHours, amperes));
    }

    private static long millisLeft(double ampereHours, double amperes) {
        return Math.round(Math.min(1e15, Math.max(0, ampereHours) / amperes * MILLIS_PER_HOUR));
    }
}
