package org.ebbwatch.judge;

import java.util.Locale;
import org.ebbwatch.judge.estimate.CoolingTime;
import org.ebbwatch.judge.estimate.Trail;

/**
 * Finds a temperature sensor that has left its cell. A cell cools with its own time constant; a reading that moves toward
 * ambient three times as fast, by at least three kelvin, is the sensor leaving, not the cell cooling. The room warming up
 * does not count: the reading itself must have fallen.
 */
final class FallWatch {
    private static final long SPAN_MILLIS = 60_000;
    /** Of a thermometer on a cell: common practice, no source. */
    private static final double NOISE_KELVIN = 0.1;

    private static final double LEAST_KELVIN = 3;
    private static final double FASTER = 3;

    private final Trail excess = new Trail(16, 4_000);
    private final Trail celsius = new Trail(16, 4_000);
    private boolean left;
    private String complaint = "";

    boolean hasLeftItsCell(long millis, double celsiusNow, double ambientNow, long coolingMillis) {
        double now = celsiusNow - ambientNow;
        if (Double.isNaN(now)) {
            return false;
        }
        if (left) {
            return true;
        }
        excess.add(millis, now);
        celsius.add(millis, celsiusNow);
        for (int step = 2; step <= excess.size(); step++) {
            long age = millis - excess.millis(step);
            if (age > SPAN_MILLIS) {
                break;
            }
            double before = excess.reading(step);
            boolean fallen = before - now >= LEAST_KELVIN && celsius.reading(step) - celsiusNow >= LEAST_KELVIN;
            if (fallen && now < coolest(before, age, coolingMillis) - LEAST_KELVIN / 2) {
                left = true;
                complaint = complaint(before, now, age, coolingMillis);
                break;
            }
        }
        return left;
    }

    private static String complaint(double before, double now, long age, long coolingMillis) {
        CoolingTime found = CoolingTime.between(before, now, age / 1000.0, NOISE_KELVIN);
        return String.format(
                Locale.ROOT,
                "temperature fell toward ambient faster than the cell can cool"
                        + " (time constant %.0f s, surely below %.0f s; a cell has %d s or more)",
                found.seconds(),
                found.mostSeconds(),
                coolingMillis / 1000);
    }

    /** What was found, in a few words with its numbers. */
    String complaint() {
        return complaint;
    }

    /** What a cell three times as quick as any could have cooled to. */
    private static double coolest(double before, long ageMillis, long coolingMillis) {
        return before * StrictMath.exp(-FASTER * ageMillis / coolingMillis);
    }

    void forget() {
        excess.clear();
        celsius.clear();
    }

    void trustAgain() {
        left = false;
        forget();
    }
}
