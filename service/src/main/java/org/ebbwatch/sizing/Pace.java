package org.ebbwatch.sizing;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ebbwatch.intake.rule.Condition;

/** How fast somebody wants a cell to be emptied. */
public sealed interface Pace {

    /** What is usual where nobody wishes for anything: C/10, or C/20 for a cell that may be damaged (from memory). */
    static Pace usual(Condition condition) {
        return new Rate(condition.isDamaged() ? Condition.FASTEST_RATE_DAMAGED : 0.1);
    }

    /**
     * Down to 0.1 V under the load in so much time.
     *
     * @param hours 0.1 to 2000
     */
    record Within(double hours) implements Pace {
        public Within {
            Ranges.require("hours", hours, 0.1, 2_000);
        }
    }

    /**
     * Not faster than this in the first moment.
     *
     * @param perHour share of the rated capacity an hour, 0.0005 to 10
     */
    record Rate(double perHour) implements Pace {
        public Rate {
            Ranges.require("rate", perHour, 0.0005, 10);
        }

        /**
         * Reads a rate as people write it: "C/10", or 0.1.
         *
         * @throws IllegalArgumentException if it is none; the message says what it takes
         */
        public static Rate of(String text) {
            Matcher written = WRITTEN.matcher(text.strip());
            if (!written.matches()) {
                throw new IllegalArgumentException("a rate takes C/HOURS such as C/10, or a share an hour such as 0.1");
            }
            return new Rate(
                    written.group(1) == null
                            ? Double.parseDouble(written.group(2))
                            : 1 / Double.parseDouble(written.group(1)));
        }

        private static final Pattern WRITTEN =
                Pattern.compile("[cC]/(\\d{1,4}(?:\\.\\d{1,4})?)|(\\d{1,2}(?:\\.\\d{1,6})?)");
    }
}
