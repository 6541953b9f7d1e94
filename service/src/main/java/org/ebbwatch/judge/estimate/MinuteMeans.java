package org.ebbwatch.judge.estimate;

/**
 * Means over minutes of a slowly changing quantity, each with its own standard error. The error is taken from the scatter of
 * whole minutes, not of single readings, so that noise slower than a reading counts too (method of batch means, from memory).
 *
 * <p>Constant memory: one number a minute, for as many minutes as are asked for; none while there are no means.
 */
public final class MinuteMeans {
    private static final long MINUTE_MILLIS = 60_000;
    private static final float[] NONE = {};

    private final int places;
    private float[] minutes = NONE;
    private int next;
    private int size;
    private double sum;
    private int count;
    private long millis;

    public MinuteMeans(int places) {
        this.places = places;
    }

    /** Takes one reading and the time watched since the one before; NaN counts nothing. Says whether a minute is full. */
    public boolean add(double reading, long stepMillis) {
        if (Double.isNaN(reading)) {
            return false;
        }
        sum += reading;
        count++;
        millis += stepMillis;
        if (millis < MINUTE_MILLIS) {
            return false;
        }
        if (size == 0) {
            minutes = new float[places];
        }
        minutes[next] = (float) (sum / count);
        next = (next + 1) % places;
        size = Math.min(size + 1, places);
        beginMinute();
        return true;
    }

    public void clear() {
        minutes = NONE;
        size = 0;
        next = 0;
        beginMinute();
    }

    private void beginMinute() {
        sum = 0;
        count = 0;
        millis = 0;
    }

    /** Whole minutes kept. */
    public int size() {
        return size;
    }

    /** The mean over the last minutes, at most {@code most}; NaN without any. */
    public double mean(int most) {
        return mean(0, Math.min(most, size));
    }

    private double mean(int from, int length) {
        double total = 0;
        for (int step = from; step < from + length; step++) {
            total += back(step);
        }
        return total / length;
    }

    /** Standard error of {@link #mean}; NaN with fewer than two minutes. */
    public double standardError(int most) {
        int length = Math.min(most, size);
        double mean = mean(most);
        double squares = 0;
        for (int step = 0; step < length; step++) {
            double off = back(step) - mean;
            squares += off * off;
        }
        return StrictMath.sqrt(squares / (length - 1) / length);
    }

    /** Between the highest and the lowest of the means over {@code length} minutes that are kept. */
    public double spread(int length) {
        double highest = Double.NEGATIVE_INFINITY;
        double lowest = Double.POSITIVE_INFINITY;
        for (int from = 0; from + length <= size; from += length) {
            double mean = mean(from, length);
            highest = Math.max(highest, mean);
            lowest = Math.min(lowest, mean);
        }
        return highest < lowest ? 0 : highest - lowest;
    }

    private double back(int step) {
        int place = next - 1 - step;
        return minutes[place < 0 ? place + places : place];
    }
}
