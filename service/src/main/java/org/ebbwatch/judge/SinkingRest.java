package org.ebbwatch.judge;

import java.util.Locale;

/**
 * Watches whether the open-circuit voltage sinks after it had risen. A resting cell's rises, ever more slowly, and stays; one
 * that sinks over hours is drawn on by something: dirt across the channel, a chafed lead, a meter left on, or a short inside
 * the cell. What it would come back to by itself cannot be seen then.
 *
 * <p>Means over half an hour are compared. The highest of them is never forgotten. Allowed is a fall of 15 %, or what the room
 * explains: 1 mV for each kelvin the cell has cooled or warmed since, and 0.5 mV, a tenth of U and six standard errors on top;
 * where its temperature is not known, 10 mV (an empty cell moves by less than 1 mV a kelvin: common practice, no source).
 * Constant memory.
 */
final class SinkingRest {
    private static final long MEAN_MILLIS = 1_800_000;
    private static final double ALLOWED_FRACTION = 0.15;
    private static final double UNEXPLAINED_VOLTS = 0.010;
    private static final double LEAST_VOLTS = 0.0005;
    private static final double VOLTS_PER_KELVIN = 0.001;
    private static final double DRIFT_SHARE = 0.1;
    private static final double ERRORS = 6;

    private double sumVolts;
    private double sumCelsius;
    private int count;
    private long millis;
    private double highest = Double.NaN;
    private double highestCelsius = Double.NaN;
    private double latest = Double.NaN;
    private double allowed;

    /** The open circuit begins, or levels before and after cannot be compared. */
    void begin() {
        highest = Double.NaN;
        latest = Double.NaN;
        beginMean();
    }

    private void beginMean() {
        sumVolts = 0;
        sumCelsius = 0;
        count = 0;
        millis = 0;
    }

    /** Follows one known reading of the open circuit. */
    void follow(Reading now) {
        sumVolts += now.volts();
        sumCelsius += now.scan().celsius();
        count++;
        millis += now.stepMillis();
        if (millis >= MEAN_MILLIS) {
            compare(now);
            beginMean();
        }
    }

    private void compare(Reading now) {
        latest = sumVolts / count;
        double celsius = sumCelsius / count;
        if (!(latest <= highest)) {
            highest = latest;
            highestCelsius = celsius;
        }
        double explained = VOLTS_PER_KELVIN * Math.abs(celsius - highestCelsius)
                + LEAST_VOLTS
                + DRIFT_SHARE * now.expandedVolts()
                + ERRORS * now.differenceVolts() / (2 * StrictMath.sqrt(count));
        double room = explained < UNEXPLAINED_VOLTS ? explained : UNEXPLAINED_VOLTS;
        allowed = Math.max(room, ALLOWED_FRACTION * highest);
    }

    boolean sinks() {
        return highest - latest > allowed;
    }

    /** The reason to hold the cell, for a person. */
    String reason() {
        return String.format(
                Locale.ROOT,
                "the voltage sinks at rest, from %.4f to %.4f V: something draws on the cell; look for a path across it",
                highest,
                latest);
    }
}
