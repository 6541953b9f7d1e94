package org.ebbwatch.speed;

import java.util.Arrays;
import java.util.Random;
import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.Entry.Suspicion;

/** What one channel reads over a stretch: a straight line of volts, and normal noise on volts and degrees. */
final class Course {
    /** A board sends one scan a second. */
    static final long STEP_MILLIS = 1_000;

    private static final int DRAWS = 4_096;
    private static final double[] NORMAL = normal(2 * DRAWS);
    private static final double VOLTS_NOISE = 0.000_5;
    private static final double KELVIN_NOISE = 0.05;
    private static final double EXPANDED_VOLTS = 0.002;
    private static final double RESOLUTION_VOLTS = 0.000_1;

    private final boolean loaded;
    private final double fromVolts;
    private final double voltsPerStep;
    private long millis;
    private int step;

    Course(long afterMillis, boolean loaded, double fromVolts, double toVolts, int steps) {
        this.millis = afterMillis;
        this.loaded = loaded;
        this.fromVolts = fromVolts;
        this.voltsPerStep = (toVolts - fromVolts) / steps;
    }

    private static double[] normal(int draws) {
        Random random = new Random(20_261_125);
        double[] drawn = new double[draws];
        Arrays.setAll(drawn, draw -> random.nextGaussian());
        return drawn;
    }

    Scan next() {
        millis += STEP_MILLIS;
        step++;
        int draw = step & (DRAWS - 1);
        return new Scan(
                millis,
                fromVolts + step * voltsPerStep + VOLTS_NOISE * NORMAL[draw],
                EXPANDED_VOLTS,
                RESOLUTION_VOLTS,
                Double.NaN,
                22 + KELVIN_NOISE * NORMAL[DRAWS + draw],
                21,
                Double.NaN,
                Double.NaN,
                loaded,
                Suspicion.NONE);
    }
}
