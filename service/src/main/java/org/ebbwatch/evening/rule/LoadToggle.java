package org.ebbwatch.evening.rule;

import static java.util.Objects.requireNonNull;

import java.util.Locale;
import java.util.Optional;
import org.ebbwatch.evening.rule.LoadAnswer.Kind;
import org.ebbwatch.judge.estimate.NoiseMeter;

/**
 * One short opening of a load, and what the cell answers. It asks for the opening and for nothing else: the judge, which wants the
 * load on, has it closed at the first reading that shows it open, whatever becomes of the check.
 *
 * <p>With a current measured, the current has to stop and to come back. Without, the voltage has to rise and to fall by more than
 * five times the expanded uncertainty of a difference of two readings; where the cell's own resistance lets less than twice that be
 * expected nothing is opened, for neither this check nor the judge could tell (common practice, no source). Event time throughout.
 */
public final class LoadToggle {
    private static final int READINGS_BEFORE = 16;
    private static final int READINGS_OF_A_LEVEL = 3;
    private static final double STEP_FACTOR = 5;
    private static final double LEAST_EXPECTED = 2;
    /** Hardly a cell has less, leads and clips counted (common practice, no source). */
    private static final double LEAST_CELL_OHMS = 0.03;

    private static final double AMPERES_SHARE = 0.3;
    private static final long OPENING_MILLIS = 6_000;
    private static final long CLOSING_MILLIS = 30_000;
    private static final long GAP_MILLIS = 5_000;
    private static final long GAP_INTERVALS = 3;

    private enum Stage {
        BEFORE,
        ASKED,
        OPEN,
        AFTER,
        OVER
    }

    private final double loadOhms;
    private final double cellOhms;
    private final long longestStepMillis;
    private final NoiseMeter noise = new NoiseMeter();
    private final Level before = new Level();
    private final Level open = new Level();
    private final Level after = new Level();

    private Stage stage = Stage.BEFORE;
    private int waited;
    private long sinceMillis;
    private long lastMillis = Long.MIN_VALUE;
    private double neededVolts;
    private LoadAnswer answer;

    /**
     * One reading of the channel.
     *
     * @param volts NaN where none is believed
     * @param amperes NaN where none is measured
     * @param resolutionVolts the step of one count, above 0
     * @param applied what the board says its switch does
     */
    public record Seen(long eventMillis, double volts, double amperes, double resolutionVolts, boolean applied) {}

    /**
     * An opening not begun.
     *
     * @param cellOhms the cell's internal resistance as the judge measured it; NaN where it did not
     * @param intervalMillis of the board
     */
    public LoadToggle(double loadOhms, double cellOhms, long intervalMillis) {
        this.loadOhms = loadOhms;
        this.cellOhms = Double.isNaN(cellOhms) ? LEAST_CELL_OHMS : cellOhms;
        this.longestStepMillis = Math.max(GAP_MILLIS, GAP_INTERVALS * intervalMillis);
    }

    /** Follows one reading; says whether the load is to be opened now. */
    public boolean follow(Seen seen) {
        requireNonNull(seen);
        if (stage == Stage.OVER) {
            return false;
        }
        boolean missing = lastMillis != Long.MIN_VALUE && seen.eventMillis() - lastMillis > longestStepMillis;
        lastMillis = seen.eventMillis();
        if (missing || Double.isNaN(seen.volts())) {
            interrupted("readings are missing");
            return false;
        }
        switch (stage) {
            case BEFORE -> {
                return isToOpen(seen);
            }
            case ASKED -> asked(seen);
            case OPEN -> open(seen);
            case AFTER -> after(seen);
            case OVER -> {}
        }
        return false;
    }

    private boolean isToOpen(Seen seen) {
        if (!seen.applied()) {
            interrupted("it was opened by somebody else");
            return false;
        }
        noise.add(seen.volts(), seen.resolutionVolts());
        waited++;
        if (waited > READINGS_BEFORE - READINGS_OF_A_LEVEL) {
            before.add(seen);
        }
        if (waited < READINGS_BEFORE) {
            return false;
        }
        neededVolts = STEP_FACTOR * noise.expandedDifference(seen.resolutionVolts());
        double expected = before.volts() / loadOhms * cellOhms;
        if (!before.hasAmperes() && expected < LEAST_EXPECTED * neededVolts) {
            end(
                    Kind.TOO_FAINT,
                    "an opening would raise it by %.1f mV, which %.1f mV of noise and steps would hide; not opened",
                    1_000 * expected,
                    1_000 * neededVolts);
            return false;
        }
        go(Stage.ASKED);
        return true;
    }

    private void asked(Seen seen) {
        if (!seen.applied()) {
            go(Stage.OPEN);
            open.add(seen);
        } else if (lastMillis - sinceMillis > Math.max(OPENING_MILLIS, longestStepMillis)) {
            end(Kind.STAYS_ON, "asked to open, and on after %d s", (lastMillis - sinceMillis) / 1_000);
        }
    }

    private void open(Seen seen) {
        if (seen.applied()) {
            go(Stage.AFTER);
            after.add(seen);
        } else if (lastMillis - sinceMillis > Math.max(CLOSING_MILLIS, longestStepMillis)) {
            end(Kind.STAYS_OPEN, "opened, and open after %d s", (lastMillis - sinceMillis) / 1_000);
        } else {
            open.add(seen);
        }
    }

    private void after(Seen seen) {
        if (!seen.applied()) {
            interrupted("it was opened by somebody else");
            return;
        }
        after.add(seen);
        if (after.readings < READINGS_OF_A_LEVEL) {
            return;
        }
        if (before.hasAmperes()) {
            judge(
                    open.amperes() < AMPERES_SHARE * before.amperes(),
                    after.amperes() > AMPERES_SHARE * before.amperes(),
                    "%.3f A, %.3f A while open, %.3f A after it",
                    before.amperes(),
                    open.amperes(),
                    after.amperes());
        } else {
            judge(
                    open.volts() - before.volts() > neededVolts,
                    open.volts() - after.volts() > neededVolts,
                    "%.4f V, %.4f V while open, %.4f V after it; at least %.1f mV had to show",
                    before.volts(),
                    open.volts(),
                    after.volts(),
                    1_000 * neededVolts);
        }
    }

    private void judge(boolean answered, boolean drawsAgain, String words, Object... figures) {
        Kind kind = !answered ? Kind.NO_RESPONSE : drawsAgain ? Kind.ANSWERS : Kind.DRAWS_NO_MORE;
        end(kind, words, figures);
    }

    /** Whatever comes next says nothing of it any more. */
    public void interrupted(String why) {
        if (stage != Stage.OVER) {
            end(Kind.INTERRUPTED, "%s", why);
        }
    }

    private void go(Stage next) {
        stage = next;
        sinceMillis = lastMillis;
    }

    private void end(Kind kind, String words, Object... figures) {
        stage = Stage.OVER;
        answer = new LoadAnswer(kind, String.format(Locale.ROOT, words, figures));
    }

    /** What it answered; empty while that is not known. */
    public Optional<LoadAnswer> answer() {
        return Optional.ofNullable(answer);
    }

    /** The means of some readings. */
    private static final class Level {
        private int readings;
        private double sumVolts;
        private double sumAmperes;

        private void add(Seen seen) {
            readings++;
            sumVolts += seen.volts();
            sumAmperes += seen.amperes();
        }

        private boolean hasAmperes() {
            return sumAmperes > 0;
        }

        private double volts() {
            return sumVolts / readings;
        }

        private double amperes() {
            return sumAmperes / readings;
        }
    }
}
