package org.ebbwatch.judge;

import org.ebbwatch.judge.estimate.Trail;

/**
 * Finds a temperature sensor that has left its cell. A cell cools with its own time constant; a reading that moves toward
 * ambient three times as fast, by at least three kelvin, is the sensor leaving, not the cell cooling. The room warming up
 * does not count: the reading itself must have fallen.
 */
final class FallWatch {
    private static final long SPAN_MILLIS = 60_000;
    private static final double LEAST_KELVIN = 3;
    private static final double FASTER = 3;

    private final Trail excess = new Trail(32, 2_000);
    private final Trail celsius = new Trail(32, 2_000);
    private boolean left;

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
            left |= fallen && now < coolest(before, age, coolingMillis) - LEAST_KELVIN / 2;
        }
        return left;
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
