package org.ebbwatch.judge;

import java.util.Locale;

/**
 * Watches whether the open-circuit voltage sinks after it had risen. A resting cell's rises, ever more slowly, and stays; one
 * that sinks over hours is drawn on by something: dirt across the channel, a chafed lead, a meter left on, or a short inside
 * the cell. What it would come back to by itself cannot be seen then.
 *
 * <p>Means over half an hour are compared, so that noise counts for nothing. The highest of them is never forgotten. A fall of
 * 10 mV or 15 % is allowed, whichever is more: an empty cell moves by less than 1 mV a kelvin with the room (common practice, no
 * source). Constant memory.
 */
final class SinkingRest {
    private static final long MEAN_MILLIS = 1_800_000;
    private static final double ALLOWED_VOLTS = 0.010;
    private static final double ALLOWED_FRACTION = 0.15;

    private double sum;
    private int count;
    private long millis;
    private double highest = Double.NaN;
    private double latest = Double.NaN;

    /** The open circuit begins, or levels before and after cannot be compared. */
    void begin() {
        highest = Double.NaN;
        latest = Double.NaN;
        beginMean();
    }

    private void beginMean() {
        sum = 0;
        count = 0;
        millis = 0;
    }

    /** Follows one known reading of the open circuit. */
    void follow(Reading now) {
        sum += now.volts();
        count++;
        millis += now.stepMillis();
        if (millis >= MEAN_MILLIS) {
            latest = sum / count;
            highest = Double.isNaN(highest) ? latest : Math.max(highest, latest);
            beginMean();
        }
    }

    boolean sinks() {
        return highest - latest > Math.max(ALLOWED_VOLTS, ALLOWED_FRACTION * highest);
    }

    /** The reason to hold the cell, for a person. */
    String reason() {
        return String.format(
                Locale.ROOT,
                "the voltage sinks at rest, from %.3f to %.3f V: something draws on the cell; look for a path across it",
                highest,
                latest);
    }
}
