package org.ebbwatch.passage;

import java.util.Arrays;
import org.ebbwatch.calibration.CalibrationPoint;

/** The last readings of a channel by the board's own scale, as many as a point of a calibration needs. */
final class ChannelReadings {
    private final double[] volts = new double[CalibrationPoint.READINGS];
    private int count;

    /** Takes a reading; one that cannot be believed starts over. */
    void add(double read) {
        if (Double.isNaN(read)) {
            clear();
            return;
        }
        if (count == volts.length) {
            System.arraycopy(volts, 1, volts, 0, volts.length - 1);
            count--;
        }
        volts[count++] = read;
    }

    void clear() {
        count = 0;
    }

    int count() {
        return count;
    }

    boolean isComplete() {
        return count == volts.length;
    }

    double mean() {
        return mean(0, count);
    }

    /** From the first half to the second. */
    double drift() {
        return mean(count / 2, count) - mean(0, count / 2);
    }

    /** Standard deviation of one reading. */
    double deviation() {
        double mean = mean();
        double sum = Arrays.stream(volts, 0, count)
                .map(each -> (each - mean) * (each - mean))
                .sum();
        return StrictMath.sqrt(sum / (count - 1));
    }

    private double mean(int from, int to) {
        return Arrays.stream(volts, from, to).average().orElse(Double.NaN);
    }
}
