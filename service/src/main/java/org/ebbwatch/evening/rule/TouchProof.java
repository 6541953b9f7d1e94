package org.ebbwatch.evening.rule;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.OptionalDouble;

/**
 * Whether a sensor rises when it is held between two fingers: by at least 1 K within a minute (common practice, no source), over the
 * room where the room is measured, in the mean of three readings. Memory: the readings of a minute.
 */
public final class TouchProof {
    /** It must rise by so much. */
    public static final double LEAST_KELVIN = 1;

    private static final long WITHIN_MILLIS = 60_000;
    private static final int MEAN_OF = 3;

    private final Deque<Warmth> minute = new ArrayDeque<>();
    private final double[] latest = new double[MEAN_OF];
    private int readings;
    private double rise = Double.NaN;

    private record Warmth(long millis, double kelvin) {}

    /**
     * Follows one reading.
     *
     * @param celsius NaN where none is believed
     * @param ambientCelsius NaN where none is believed
     */
    public void follow(long eventMillis, double celsius, double ambientCelsius) {
        double kelvin = Double.isNaN(ambientCelsius) ? celsius : celsius - ambientCelsius;
        if (Double.isNaN(kelvin)) {
            minute.clear();
            readings = 0;
            return;
        }
        latest[readings++ % MEAN_OF] = kelvin;
        if (readings < MEAN_OF) {
            return;
        }
        double mean = (latest[0] + latest[1] + latest[2]) / MEAN_OF;
        minute.add(new Warmth(eventMillis, mean));
        while (eventMillis - minute.getFirst().millis() > WITHIN_MILLIS) {
            minute.removeFirst();
        }
        double lowest = minute.stream().mapToDouble(Warmth::kelvin).min().orElse(mean);
        if (mean - lowest >= LEAST_KELVIN && !(rise >= mean - lowest)) {
            rise = mean - lowest;
        }
    }

    /** By how many kelvin it rose; empty while it did not rise enough. */
    public OptionalDouble riseKelvin() {
        return Double.isNaN(rise) ? OptionalDouble.empty() : OptionalDouble.of(rise);
    }
}
