package org.ebbwatch.night;

import java.util.List;
import java.util.Locale;

/** Numbers as the document shows them. */
final class Figures {
    /** What 95 % confidence leaves in doubt. */
    private static final double DOUBT = 0.05;

    /** With none seen in n, fewer than 3 / n are to be expected with 95 % confidence: the rule of three. */
    private static final double RULE_OF_THREE = 3;

    private Figures() {}

    /** A count among so many chances, with the upper bound beside a nought. */
    static String count(int count, double chances) {
        if (count > 0 || chances == 0) {
            return Integer.toString(count);
        }
        double bound = 1 - StrictMath.pow(DOUBT, 1 / chances);
        return String.format(Locale.ROOT, "0 (< %s %%)", two(100 * bound));
    }

    /** A count per thousand of something, with the upper bound beside a nought. */
    static String perThousand(int count, double of) {
        return count > 0
                ? two(1000.0 * count / of)
                : String.format(Locale.ROOT, "0 (< %s)", two(1000 * RULE_OF_THREE / of));
    }

    /** A number with two digits that count. */
    static String two(double number) {
        if (Double.isNaN(number)) {
            return "-";
        } else if (Double.isInfinite(number)) {
            return "never";
        }
        int digits = number == 0 || number >= 10
                ? 0
                : (int) Math.min(4, Math.max(0, 1 - Math.floor(StrictMath.log10(Math.abs(number)))));
        return String.format(Locale.ROOT, "%." + digits + "f", number);
    }

    /** The median and the 95th percentile. */
    static String medianAnd95(List<Double> numbers) {
        return numbers.isEmpty() ? "-" : two(share(numbers, 0.5)) + " / " + two(share(numbers, 0.95));
    }

    static double share(List<Double> numbers, double share) {
        List<Double> sorted = numbers.stream().sorted().toList();
        return sorted.get((int) Math.min(sorted.size() - 1, Math.floor(share * sorted.size())));
    }
}
