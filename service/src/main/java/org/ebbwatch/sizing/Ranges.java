package org.ebbwatch.sizing;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers within their ranges, and as people read them. */
final class Ranges {
    private static final MathContext THREE_DIGITS = new MathContext(3);

    private Ranges() {}

    /** Refuses a number outside [least, most]. */
    static void require(String what, double number, double least, double most) {
        if (!(number >= least && number <= most)) {
            throw new IllegalArgumentException(
                    what + " takes " + plain(least) + " to " + plain(most) + ", not " + number);
        }
    }

    /** Three digits, without an exponent and without zeros that say nothing. */
    static String plain(double number) {
        BigDecimal rounded = new BigDecimal(number).round(THREE_DIGITS).stripTrailingZeros();
        return rounded.signum() == 0 ? "0" : rounded.toPlainString();
    }
}
