package org.ebbwatch.sizing;

import java.util.List;
import java.util.stream.IntStream;

/** Values in which resistors are made (IEC 60063). */
public enum PreferredSeries {
    /** Two digits, a table: eight of its values are not those a formula would give. */
    E24(10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91),
    /** Three digits, the 96th roots of ten rounded. */
    E96(rounded(96));

    @SuppressWarnings("ImmutableEnumChecker") // made by List.of, which never changes
    private final List<Integer> mantissas;

    PreferredSeries(Integer... mantissas) {
        this.mantissas = List.of(mantissas);
    }

    private static Integer[] rounded(int steps) {
        return IntStream.range(0, steps)
                .mapToObj(i -> (int) Math.round(100 * StrictMath.pow(10, (double) i / steps)))
                .toArray(Integer[]::new);
    }

    /** The values of one decade, from 10 or 100 on. */
    public List<Integer> mantissas() {
        return mantissas;
    }

    /** The smallest value that is not below, ohms. */
    public double atLeast(double ohms) {
        double scale = scale(ohms);
        return mantissas.stream()
                .mapToDouble(mantissa -> value(mantissa, scale))
                .filter(value -> value >= ohms * (1 - 1e-9))
                .findFirst()
                .orElseGet(() -> value(mantissas.get(0), scale * 10));
    }

    /** The largest value that is not above, ohms. */
    public double atMost(double ohms) {
        double scale = scale(ohms);
        return mantissas.stream()
                .mapToDouble(mantissa -> value(mantissa, scale))
                .filter(value -> value <= ohms * (1 + 1e-9))
                .max()
                .orElseGet(() -> value(mantissas.get(mantissas.size() - 1), scale / 10));
    }

    private double scale(double ohms) {
        if (!(ohms > 0) || Double.isInfinite(ohms)) {
            throw new IllegalArgumentException("ohms are above 0, not " + ohms);
        }
        return StrictMath.pow(10, Math.floor(StrictMath.log10(ohms)));
    }

    /** Divides rather than multiplies below 1, so that 4.7 is 4.7. */
    private double value(int mantissa, double scale) {
        double factor = scale / mantissas.get(0);
        return factor >= 1 ? mantissa * factor : mantissa / (double) Math.round(1 / factor);
    }
}
