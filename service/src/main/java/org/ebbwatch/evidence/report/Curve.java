package org.ebbwatch.evidence.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.ebbwatch.judge.Entry;

/**
 * A passage's readings thinned for a plot while they pass by: the lowest and highest of each stretch of time, so that no peak is
 * lost. Whenever more than 1024 stretches would be needed each two become one; memory stays below 100 KB however long a passage is.
 */
public final class Curve {
    private static final int MOST = 1024;
    private static final int QUANTITIES = 6;

    private final double[][] columns = new double[QUANTITIES][MOST];
    private final byte[] load = new byte[MOST];
    private long originMillis = Long.MIN_VALUE;
    private long lastMillis;
    private long widthMillis = 1_000;
    private int used;

    /**
     * The extremes of one stretch of time; NaN: not read in it.
     *
     * @param load whether the load was on at some time in it
     */
    public record Stretch(
            long fromMillis,
            long toMillis,
            double lowVolts,
            double highVolts,
            double lowCelsius,
            double highCelsius,
            double lowAmbientCelsius,
            double highAmbientCelsius,
            boolean load) {}

    /** An empty curve. */
    public Curve() {
        for (double[] column : columns) {
            Arrays.fill(column, Double.NaN);
        }
    }

    /** Takes the next reading. */
    public void take(Entry.Scan scan) {
        long millis = scan.eventMillis();
        if (originMillis == Long.MIN_VALUE) {
            originMillis = millis;
        }
        while ((millis - originMillis) / widthMillis >= MOST) {
            halve();
        }
        int at = (int) ((millis - originMillis) / widthMillis);
        used = at + 1;
        lastMillis = millis;
        widen(0, at, scan.volts());
        widen(2, at, scan.celsius());
        widen(4, at, scan.ambientCelsius());
        load[at] |= (byte) (scan.loadApplied() ? 1 : 0);
    }

    private void widen(int quantity, int at, double number) {
        if (!Double.isNaN(number)) {
            columns[quantity][at] = lower(columns[quantity][at], number);
            columns[quantity + 1][at] = higher(columns[quantity + 1][at], number);
        }
    }

    private static double lower(double one, double other) {
        return Double.isNaN(one) || other < one ? other : one;
    }

    private static double higher(double one, double other) {
        return Double.isNaN(one) || other > one ? other : one;
    }

    private void halve() {
        for (int quantity = 0; quantity < QUANTITIES; quantity++) {
            double[] column = columns[quantity];
            for (int at = 0; at < MOST / 2; at++) {
                double one = column[2 * at];
                double other = column[2 * at + 1];
                column[at] = quantity % 2 == 0 ? lower(one, other) : higher(one, other);
            }
            Arrays.fill(column, MOST / 2, MOST, Double.NaN);
        }
        for (int at = 0; at < MOST / 2; at++) {
            load[at] = (byte) (load[2 * at] | load[2 * at + 1]);
        }
        Arrays.fill(load, MOST / 2, MOST, (byte) 0);
        widthMillis *= 2;
    }

    /** Event time of the last reading; of the first where there is none. */
    long lastMillis() {
        return lastMillis;
    }

    /** The stretches in order; one in which nothing was read is all NaN. */
    List<Stretch> stretches() {
        List<Stretch> stretches = new ArrayList<>();
        for (int at = 0; at < used; at++) {
            long from = originMillis + at * widthMillis;
            stretches.add(new Stretch(
                    from,
                    from + widthMillis,
                    columns[0][at],
                    columns[1][at],
                    columns[2][at],
                    columns[3][at],
                    columns[4][at],
                    columns[5][at],
                    load[at] != 0));
        }
        return stretches;
    }
}
