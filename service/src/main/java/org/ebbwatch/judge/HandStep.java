package org.ebbwatch.judge;

import java.util.Optional;

/**
 * Recognises from its step that a load which hands put on and take off is not where they said.
 *
 * <p>On a fixed load a cell's voltage falls; off it, it stands or rises. A load put on takes at least 10 mV and less than 30 % off
 * within minutes (more is a lead that came off); one taken off gives at least 10 mV back, near empty at least 30 %. A step must
 * stand out of the channel's noise and last 30 s. Where amperes are measured and the cell has half a volt, they decide. The
 * limits are common practice without a source, the same as those of a load that is lost. Memory: some numbers.
 *
 * <p>A step is <em>certain</em> where it is above 5 U as well and can be nothing else: a load that drew before, a reading that was
 * no zero (a lead put back rises from one), and no more than a cell can come back to. All else is only worth a question.
 */
final class HandStep {
    private static final long LASTS_MILLIS = 30_000;
    private static final double LEAST_STEP_VOLTS = 0.010;
    private static final double NOISE_FACTOR = 20;
    private static final double MOST_SAG_FRACTION = 0.3;
    private static final double CLIMB_FRACTION = 0.3;
    private static final double TELLING_VOLTS = 0.5;
    private static final double AMPERES_FRACTION = 0.3;
    private static final double REFERENCE_MILLIS = 600_000;
    private static final double STEEP_VOLTS = 3.0;
    private static final double OPEN_RISE_VOLTS = 0.5;
    private static final long NEVER = Long.MIN_VALUE;

    private final LoadedCell cell;
    private boolean on;
    private double smoothVolts = Double.NaN;
    private double referenceVolts = Double.NaN;
    private long lastMillis = NEVER;
    private long sinceMillis = NEVER;
    private boolean seems;
    private boolean certain;

    HandStep(LoadedCell cell) {
        this.cell = cell;
    }

    /**
     * Follows one reading.
     *
     * @param said whether the load is on as far as anybody knows
     * @param drew whether that load has been seen to draw anything
     * @param amperes NaN where no current is measured
     */
    void follow(Reading now, double amperes, boolean said, boolean drew) {
        if (said != on) {
            on = said;
            forget();
        }
        if (!now.isKnown()) {
            return;
        }
        double volts = now.volts();
        if (!on && volts < (1 - MOST_SAG_FRACTION) * referenceVolts) {
            forget();
        }
        smoothVolts = Double.isNaN(smoothVolts) ? volts : smoothVolts + (volts - smoothVolts) / 4;
        double least = Math.max(LEAST_STEP_VOLTS, NOISE_FACTOR * now.differenceVolts());
        boolean elsewhere = isElsewhere(least, volts, amperes);
        if (!elsewhere) {
            settle();
            level(now.atMillis());
        } else if (now.announced()) {
            settle();
        } else if (sinceMillis == NEVER) {
            sinceMillis = now.atMillis();
        } else {
            seems = now.atMillis() - sinceMillis >= LASTS_MILLIS;
            certain = seems && (on ? isSurelyOff(now, amperes, drew) : isSurelyOn(now, amperes));
        }
        lastMillis = now.atMillis();
    }

    /** The lowest voltage with the load on, the highest with it off; what lies back more than minutes is forgotten. */
    private void level(long millis) {
        boolean beyond = on ? smoothVolts < referenceVolts : smoothVolts > referenceVolts;
        if (Double.isNaN(referenceVolts) || beyond) {
            referenceVolts = smoothVolts;
        } else {
            referenceVolts += (smoothVolts - referenceVolts) * Math.min(1, (millis - lastMillis) / REFERENCE_MILLIS);
        }
    }

    private boolean isElsewhere(double least, double volts, double amperes) {
        boolean flows = amperes > AMPERES_FRACTION * cell.amperesAt(volts) && amperes > 0;
        if (Double.isNaN(amperes)) {
            return on ? hasRisen(least) : hasSagged(least);
        }
        if (volts > TELLING_VOLTS) {
            return flows != on;
        }
        return on && !flows && hasRisen(least);
    }

    private boolean hasRisen(double least) {
        double limit = referenceVolts > 1 ? least : Math.max(least, CLIMB_FRACTION * referenceVolts);
        return smoothVolts - referenceVolts > limit;
    }

    private boolean hasSagged(double least) {
        double sag = referenceVolts - smoothVolts;
        return smoothVolts > TELLING_VOLTS && sag > least && sag < MOST_SAG_FRACTION * referenceVolts;
    }

    private boolean isSurelyOff(Reading now, double amperes, boolean drew) {
        if (!Double.isNaN(amperes) && now.volts() > TELLING_VOLTS) {
            return drew;
        }
        double expanded = now.expandedVolts();
        boolean plain = smoothVolts - referenceVolts > LoadWatch.STEP_FACTOR * expanded;
        boolean noZero = referenceVolts > expanded;
        boolean itsOwn = smoothVolts <= Math.max(referenceVolts, STEEP_VOLTS) + OPEN_RISE_VOLTS;
        return drew && plain && noZero && itsOwn;
    }

    private boolean isSurelyOn(Reading now, double amperes) {
        boolean plain = referenceVolts - smoothVolts > LoadWatch.STEP_FACTOR * now.expandedVolts();
        return plain || !Double.isNaN(amperes);
    }

    private void settle() {
        sinceMillis = NEVER;
        seems = false;
        certain = false;
    }

    /** Readings before and after cannot be compared. */
    void forget() {
        smoothVolts = Double.NaN;
        referenceVolts = Double.NaN;
        settle();
    }

    /** What the terminals say against what was said; empty where they agree or cannot tell. */
    Optional<LoadStep> seems() {
        return seems ? Optional.of(on ? LoadStep.SEEMS_OFF : LoadStep.SEEMS_ON) : Optional.empty();
    }

    /** Whether what {@link #seems()} can be nothing else. */
    boolean isCertain() {
        return certain;
    }

    /** Whether there is a step that has not lasted long enough yet to be told. */
    boolean isWeighing() {
        return sinceMillis != NEVER && !seems;
    }

    /** The level before the step; NaN before any reading. */
    double beforeVolts() {
        return referenceVolts;
    }
}
