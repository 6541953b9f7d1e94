package org.ebbwatch.passage;

import java.util.Optional;
import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.estimate.NoiseMeter;

/**
 * Recognises from its step that a load which hands put on and take off is not where the person said, so that the person can be
 * asked. It decides nothing: the judge goes by what people say, and by LOAD_LOST where nobody says anything.
 *
 * <p>On a fixed load a cell's voltage falls; off it, it stands or rises. A load put on takes at least 10 mV and less than 30 % off
 * within minutes (more is a lead that came off); one taken off gives at least 10 mV back, near empty at least 30 %. A step must
 * stand out of the channel's noise and last 30 s. Where amperes are measured and the cell has half a volt, they tell at once. The
 * limits are common practice without a source, the same as the judge's own for a load that is lost. Memory: some numbers.
 */
final class HandLoad {
    private static final long LASTS_MILLIS = 30_000;
    private static final double LEAST_STEP_VOLTS = 0.010;
    private static final double NOISE_FACTOR = 20;
    private static final double MOST_SAG_FRACTION = 0.3;
    private static final double CLIMB_FRACTION = 0.3;
    private static final double TELLING_VOLTS = 0.5;
    private static final double AMPERES_FRACTION = 0.3;
    private static final double REFERENCE_MILLIS = 600_000;
    private static final long NEVER = Long.MIN_VALUE;

    private final double loadOhms;
    private final NoiseMeter noise = new NoiseMeter();
    private boolean on;
    private double smoothVolts = Double.NaN;
    private double referenceVolts = Double.NaN;
    private long lastMillis = NEVER;
    private long sinceMillis = NEVER;
    private boolean seems;

    HandLoad(double loadOhms) {
        this.loadOhms = loadOhms;
    }

    /** Follows a reading; {@code saidOn} is what the judge goes by. */
    void follow(Scan scan, boolean saidOn, Phase phase, boolean bonded) {
        noise.add(scan.volts(), scan.resolutionVolts());
        if (saidOn != on || bonded || phase.isOver()) {
            on = saidOn;
            forget();
        }
        if (Double.isNaN(scan.volts()) || bonded || phase.isOver()) {
            return;
        }
        smoothVolts = Double.isNaN(smoothVolts) ? scan.volts() : smoothVolts + (scan.volts() - smoothVolts) / 4;
        double least = Math.max(LEAST_STEP_VOLTS, NOISE_FACTOR * noise.expandedDifference(scan.resolutionVolts()));
        boolean elsewhere = Double.isNaN(scan.amperes()) ? hasStepped(least) : isContradicted(scan);
        if (!elsewhere) {
            sinceMillis = NEVER;
            seems = false;
            follow(scan.eventMillis());
        } else if (sinceMillis == NEVER) {
            sinceMillis = scan.eventMillis();
        } else {
            seems = scan.eventMillis() - sinceMillis >= LASTS_MILLIS;
        }
        lastMillis = scan.eventMillis();
    }

    /** The lowest voltage with the load on, the highest with it off; what lies back more than minutes is forgotten. */
    private void follow(long millis) {
        boolean beyond = on ? smoothVolts < referenceVolts : smoothVolts > referenceVolts;
        if (Double.isNaN(referenceVolts) || beyond) {
            referenceVolts = smoothVolts;
        } else {
            referenceVolts += (smoothVolts - referenceVolts) * Math.min(1, (millis - lastMillis) / REFERENCE_MILLIS);
        }
    }

    private boolean hasStepped(double least) {
        if (on) {
            double limit = referenceVolts > 1 ? least : Math.max(least, CLIMB_FRACTION * referenceVolts);
            return smoothVolts - referenceVolts > limit;
        }
        double sag = referenceVolts - smoothVolts;
        return smoothVolts > TELLING_VOLTS && sag > least && sag < MOST_SAG_FRACTION * referenceVolts;
    }

    private boolean isContradicted(Scan scan) {
        boolean flows = scan.amperes() > AMPERES_FRACTION * scan.volts() / loadOhms;
        return scan.volts() > TELLING_VOLTS && flows != on;
    }

    /** Readings before and after cannot be compared. */
    void forget() {
        smoothVolts = Double.NaN;
        referenceVolts = Double.NaN;
        sinceMillis = NEVER;
        seems = false;
    }

    /** What the terminals say against what was said; empty where they agree or cannot tell. */
    Optional<LoadStep> seems() {
        return seems ? Optional.of(on ? LoadStep.SEEMS_OFF : LoadStep.SEEMS_ON) : Optional.empty();
    }
}
