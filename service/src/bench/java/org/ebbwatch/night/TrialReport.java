package org.ebbwatch.night;

import java.util.List;
import java.util.Locale;
import org.ebbwatch.night.HeatingTrial.Delays;

/** Runs the heating trials and writes what they gave. */
final class TrialReport {
    private static final double SLOW = 0.2 / 60;
    private static final double NOISE = 0.1;
    private static final double SHORT = 2;
    private static final double SENSOR_SECONDS = 12;

    private final int trials;
    private final long seed;
    private final StringBuilder out = new StringBuilder();

    TrialReport(int trials, long seed) {
        this.trials = trials;
        this.seed = seed;
    }

    private void line(String format, Object... arguments) {
        out.append(String.format(Locale.ROOT, format, arguments)).append('\n');
    }

    String text() {
        line("## How soon heating is found");
        line("");
        line(
                "A cell on its load at 3.5 V, 2 K above a room of 21 degC, begins after 80 minutes to heat at a steady slope; %d trials a line.",
                trials);
        line(
                "Seconds from the onset, median / p95. Ideal: Page's test with slope, level and noise known, at one false");
        line("alarm in 1,000 nights, on the same readings.");
        line("");
        line("| asked | measured |");
        line("| --- | --- |");
        slow("on its load", true);
        slow("without a load", false);
        line(
                "| HOT within 3 s at 2 K/s at the sensor, 1 Hz, 0.1 K | %s |",
                Figures.medianAnd95(run(SHORT, NOISE, 1_000, 0, true).hot()));
        line(
                "| HOT within 8 s at 2 K/s through a sensor of 12 s | %s |",
                Figures.medianAnd95(
                        run(SHORT, NOISE, 1_000, SENSOR_SECONDS, true).hot()));
        line("");
        line("By slope and noise, at 1 Hz, through a sensor of 12 s:");
        line("");
        head();
        for (double perMinute : List.of(0.05, 0.2, 1.0, 5.0, 30.0, 120.0)) {
            row(perMinute, NOISE, 1_000);
        }
        for (double noise : List.of(0.02, 0.05, 0.2, 0.3)) {
            row(0.2, noise, 1_000);
        }
        line("");
        line("What a slow interval costs (and a quick one brings), through a sensor of 12 s.");
        line("");
        head();
        for (long interval : List.of(100L, 500L, 1_000L, 2_000L, 5_000L, 6_000L, 10_000L, 30_000L, 60_000L)) {
            row(0.2, NOISE, interval);
            row(120, NOISE, interval);
        }
        line("");
        return out.toString();
    }

    private void slow(String where, boolean onLoad) {
        Delays delays = run(SLOW, NOISE, 1_000, 0, onLoad);
        line(
                "| 0.2 K/min at 0.1 K, %s: median within 1.3 times the ideal's | %s against %s: %s times |",
                where,
                Figures.two(Figures.share(delays.warming(), 0.5)),
                Figures.two(Figures.share(delays.ideal(), 0.5)),
                Figures.two(Figures.share(delays.warming(), 0.5) / Figures.share(delays.ideal(), 0.5)));
    }

    private void head() {
        line("| interval | slope K/min | noise K | WARMING or HOT on load | the same without | HOT on load | ideal |");
        line("| --- | --- | --- | --- | --- | --- | --- |");
    }

    private Delays run(double perSecond, double noise, long interval, double sensor, boolean onLoad) {
        int fewer = interval < 500 ? Math.max(20, trials / 10) : trials;
        return new HeatingTrial(perSecond, noise, interval, sensor, onLoad).run(fewer, seed);
    }

    private void row(double perMinute, double noise, long interval) {
        Delays delays = run(perMinute / 60, noise, interval, SENSOR_SECONDS, true);
        Delays waiting = run(perMinute / 60, noise, interval, SENSOR_SECONDS, false);
        line(
                "| %s s | %s | %s | %s | %s | %s | %s |",
                Figures.two(interval / 1000.0),
                Figures.two(perMinute),
                Figures.two(noise),
                Figures.medianAnd95(delays.warming()),
                Figures.medianAnd95(waiting.warming()),
                Figures.medianAnd95(delays.hot()),
                Figures.medianAnd95(delays.ideal()));
    }
}
