package org.ebbwatch.replay;

import java.util.Arrays;
import java.util.List;
import org.ebbwatch.replay.Recording.Row;

/**
 * When the load of a recording was on.
 *
 * <p>Discharge is whichever direction more charge went in. It begins above 2 % of the largest current and above 0.05 A, and ends
 * below 0.05 A or where it is lost in its own noise: a current that fades stays on, a spike of an idle channel is none. Where it
 * was not read, or is absurd, the load stays as it was.
 */
final class RecordedLoad {
    private static final double LEAST_AMPERES = 0.05;
    private static final double LARGEST_SHARE = 0.02;
    private static final double NOISE_FACTOR = 5;
    /** Half of all second differences of white noise of deviation 1 are below this: 0.6745 sqrt(6). */
    private static final double MEDIAN_BEND_OF_DEVIATION = 1.652;

    private static final double BELIEVABLE_AMPERES = 1e4;

    private final List<Row> rows;
    private final int direction;
    private final double beginsAmperes;
    private final double endsAmperes;

    RecordedLoad(Recording recording) {
        rows = recording.rows();
        double[] currents = rows.stream()
                .mapToDouble(Row::amperes)
                .filter(RecordedLoad::isRead)
                .toArray();
        direction = Arrays.stream(currents).sum() < 0 ? -1 : 1;
        double largest = Arrays.stream(currents)
                .map(current -> direction * current)
                .max()
                .orElse(0);
        double least = Math.min(LEAST_AMPERES, largest / 2);
        beginsAmperes = Math.max(least, LARGEST_SHARE * largest);
        endsAmperes = Math.min(beginsAmperes, Math.max(least, NOISE_FACTOR * noise(currents)));
    }

    /** The current of a row, discharge positive, as it was read. */
    double amperes(Row row) {
        return direction * row.amperes();
    }

    /** Whether the load is on with this row, given whether it was on before. */
    boolean isOn(Row row, boolean before) {
        return isRead(row.amperes()) ? amperes(row) > (before ? endsAmperes : beginsAmperes) : before;
    }

    /** The median of volts over amperes while current flowed; NaN where none did. */
    double ohms() {
        double[] ohms = rows.stream()
                .filter(row -> isOn(row, false) && row.volts() > 0)
                .mapToDouble(row -> row.volts() / amperes(row))
                .toArray();
        return median(ohms);
    }

    private static boolean isRead(double amperes) {
        return Math.abs(amperes) < BELIEVABLE_AMPERES;
    }

    /** Deviation of white noise on a current that bends little, from its second differences. */
    private static double noise(double[] currents) {
        double[] bends = new double[Math.max(0, currents.length - 2)];
        for (int place = 0; place < bends.length; place++) {
            bends[place] = Math.abs(currents[place] - 2 * currents[place + 1] + currents[place + 2]);
        }
        return bends.length == 0 ? 0 : median(bends) / MEDIAN_BEND_OF_DEVIATION;
    }

    private static double median(double[] numbers) {
        Arrays.sort(numbers);
        return numbers.length == 0 ? Double.NaN : numbers[numbers.length / 2];
    }
}
