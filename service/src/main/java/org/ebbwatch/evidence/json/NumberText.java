package org.ebbwatch.evidence.json;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Finite doubles as decimal text that reads back as the very same double, and that is the same on every machine and Java.
 * A whole number of billionths is written as such ({@code 3.7001}); anything else with 17 significant digits, which are enough
 * for every double (IEEE 754-2019, 5.12.2).
 */
public final class NumberText {
    private static final double BILLION = 1e9;
    private static final long EXACT_MOST = 1L << 53;
    private static final MathContext ENOUGH = new MathContext(17, RoundingMode.HALF_EVEN);
    private static final int BILLIONTH_DIGITS = 9;

    private NumberText() {}

    public static String of(double number) {
        var text = new StringBuilder(24);
        append(text, number);
        return text.toString();
    }

    /**
     * Appends a number.
     *
     * @throws IllegalArgumentException if it is infinite or none
     */
    public static void append(StringBuilder into, double number) {
        if (Double.isNaN(number) || Double.isInfinite(number)) {
            throw new IllegalArgumentException("no finite number: " + number);
        }
        long billionths = Math.round(number * BILLION);
        boolean exact = Math.abs(billionths) < EXACT_MOST
                && Double.doubleToRawLongBits(billionths / BILLION) == Double.doubleToRawLongBits(number);
        if (exact) {
            fixed(into, billionths);
        } else if (number == 0) {
            into.append("-0.0");
        } else {
            into.append(new BigDecimal(number).round(ENOUGH));
        }
    }

    private static void fixed(StringBuilder into, long billionths) {
        if (billionths < 0) {
            into.append('-');
        }
        long rest = Math.abs(billionths);
        into.append(rest / 1_000_000_000);
        rest %= 1_000_000_000;
        if (rest == 0) {
            return;
        }
        into.append('.');
        for (int digit = 0, unit = 100_000_000; digit < BILLIONTH_DIGITS && rest > 0; digit++, unit /= 10) {
            into.append((char) ('0' + rest / unit));
            rest %= unit;
        }
    }
}
