package org.ebbwatch.judge;

import java.util.function.DoubleUnaryOperator;

/**
 * A cell as two voltages: what it shows on its load and what it comes back to. On its load it falls no faster than 3 mV a
 * second, as charge leaves it, unless it is made to collapse; off its load it recovers exponentially.
 */
final class BenchCell {
    private static final double FALL_VOLTS_PER_SECOND = 0.003;

    private static final double BONDED_VOLTS = 0.0005;

    private double restVolts = 3.70;
    private double loadedVolts = 3.60;
    private double recoverySeconds = 120;
    private DoubleUnaryOperator sinking;

    private double onLoadNow = Double.NaN;
    private double openFromVolts = Double.NaN;
    private double openSinceSeconds;
    private double lastSeconds;
    private double lastVolts;

    void become(double comesBackTo, double onLoad) {
        restVolts = comesBackTo;
        loadedVolts = onLoad;
    }

    /** On its load the voltage is there at once. */
    void collapse() {
        onLoadNow = loadedVolts;
    }

    /** Off its load the voltage is there at once. */
    void settle() {
        openFromVolts = restVolts;
        collapse();
    }

    void recoverOver(double seconds) {
        recoverySeconds = seconds;
    }

    void sink(double toVolts, double overSeconds) {
        double from = restVolts;
        double since = lastSeconds;
        sinking = now -> Math.max(toVolts, from + (toVolts - from) * (now - since) / overSeconds);
    }

    double restVolts() {
        return restVolts;
    }

    double lastVolts() {
        return lastVolts;
    }

    double volts(double seconds, boolean loaded, boolean bonded) {
        lastVolts = voltsNow(seconds, loaded, bonded);
        return lastVolts;
    }

    private double voltsNow(double seconds, boolean loaded, boolean bonded) {
        double step = seconds - lastSeconds;
        lastSeconds = seconds;
        if (sinking != null) {
            restVolts = sinking.applyAsDouble(seconds);
        }
        if (loaded && onLoadNow > loadedVolts) {
            onLoadNow = Math.max(loadedVolts, onLoadNow - FALL_VOLTS_PER_SECOND * step);
        } else if (loaded) {
            onLoadNow = loadedVolts;
        }
        if (loaded || bonded) {
            openSinceSeconds = seconds;
            openFromVolts = bonded ? BONDED_VOLTS : onLoadNow;
            return openFromVolts;
        }
        double from = Double.isNaN(openFromVolts) ? restVolts : openFromVolts;
        return restVolts + (from - restVolts) * Math.exp(-(seconds - openSinceSeconds) / recoverySeconds);
    }
}
