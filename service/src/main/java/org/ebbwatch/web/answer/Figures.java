package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import java.time.Instant;

/** Numbers as the outside sees them: what is not finite is null, and no more digits than a board can mean. */
final class Figures {
    private static final double MICRO = 1e6;
    private static final double MILLI = 1e3;

    private Figures() {}

    /** To the millionth: volts, amperes, ampere hours. */
    @Nullable static Double fine(double number) {
        return rounded(number, MICRO);
    }

    /** To the thousandth: degrees, seconds. */
    @Nullable static Double coarse(double number) {
        return rounded(number, MILLI);
    }

    /** RFC 3339 in UTC; null for a time that was never set. */
    @Nullable static String wallTime(long wallMillis) {
        return wallMillis <= 0 ? null : Instant.ofEpochMilli(wallMillis).toString();
    }

    @Nullable private static Double rounded(double number, double parts) {
        if (!Double.isFinite(number)) {
            return null;
        }
        double scaled = Math.rint(number * parts) / parts;
        return Double.isFinite(scaled) ? scaled + 0.0 : Double.valueOf(number);
    }
}
