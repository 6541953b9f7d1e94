package org.ebbwatch.evidence.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Numbers of the record as a person reads them. A quantity is rounded as its uncertainty is, and that to two digits (JCGM 100,
 * 7.2.6); U is rounded up, so that rounding never makes a result look surer than it is.
 */
final class Figures {
    private static final double MILLIS_PER_HOUR = 3_600_000;
    private static final double MILLIS_PER_MINUTE = 60_000;
    private static final MathContext TWO_DIGITS = new MathContext(2, RoundingMode.CEILING);
    private static final int MOST_PLACES = 6;

    private Figures() {}

    /** An expanded uncertainty. */
    static String uncertainty(double expanded) {
        return rounded(expanded).toPlainString();
    }

    /** A result, to the last place of its uncertainty. */
    static String result(double number, double expanded) {
        return BigDecimal.valueOf(number)
                .setScale(rounded(expanded).scale(), RoundingMode.HALF_EVEN)
                .toPlainString();
    }

    private static BigDecimal rounded(double expanded) {
        BigDecimal two = BigDecimal.valueOf(expanded).round(TWO_DIGITS);
        return two.setScale(Math.max(0, Math.min(MOST_PLACES, two.scale())), RoundingMode.CEILING);
    }

    /** A number to so many places. */
    static String places(double number, int places) {
        return BigDecimal.valueOf(number)
                .setScale(places, RoundingMode.HALF_EVEN)
                .toPlainString();
    }

    /** A limit or a rating as it was set, without zeros that say nothing. */
    static String plain(double number) {
        return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
    }

    /** A stretch of time in hours; below one in minutes. */
    static String lasting(long millis) {
        return Math.abs(millis) < MILLIS_PER_HOUR
                ? places(millis / MILLIS_PER_MINUTE, 2) + " min"
                : places(millis / MILLIS_PER_HOUR, 2) + " h";
    }

    /** A time of the procedure, as it was set. */
    static String set(long millis) {
        double unit = millis < MILLIS_PER_HOUR ? MILLIS_PER_MINUTE : MILLIS_PER_HOUR;
        String number = BigDecimal.valueOf(millis / unit)
                .round(new MathContext(6))
                .stripTrailingZeros()
                .toPlainString();
        return number + (unit == MILLIS_PER_HOUR ? " h" : " min");
    }

    /** A wall time to the second, UTC. */
    static String wall(String rfc3339) {
        return rfc3339.substring(0, 10) + ' ' + rfc3339.substring(11, 19) + " UTC";
    }
}
