package org.ebbwatch.sim.rack;

import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.sim.scenario.ConverterSpec;

/**
 * One voltage input with its converter: offset, gain, noise, rails, the drift of an input that nothing holds, and the weak
 * pull of the lead check. An input that nothing holds drifts by the leakage across its bleed.
 */
final class VoltsInput {
    /** The lead check pulls towards so many volts through {@link #PULL_OHMS}. */
    static final double PULL_VOLTS = 2.5;

    static final double PULL_OHMS = 100_000;
    /** What pulls an open input towards 0 V. */
    static final double BLEED_OHMS = 10e6;
    /** How far the pull moves an input that nothing else holds. */
    static final double OPEN_MOVES_VOLTS = PULL_VOLTS * BLEED_OHMS / (BLEED_OHMS + PULL_OHMS);

    private static final double COUNTS_PER_VOLT = 1e9 / ConverterSpec.NANOVOLTS_PER_COUNT;
    private static final double FLOAT_TAU_SECONDS = 60;
    private static final double FLOAT_SPREAD_VOLTS = 0.1;
    private static final double FLOAT_HUM_VOLTS = 0.003;

    private final int lowest;
    private final int highest;
    private final double noiseCounts;
    private final double offsetCounts;
    private final double countsPerVolt;

    private boolean held = true;
    private double floatVolts;
    private int counts;
    private int state;

    VoltsInput(ConverterSpec spec, Randomness errors) {
        lowest = spec.lowestCounts();
        highest = spec.highestCounts();
        noiseCounts = spec.voltsNoiseCounts();
        offsetCounts = errors.nextNormal() * spec.offsetMicrovolts() / 2 * 1e-6 * COUNTS_PER_VOLT;
        countsPerVolt = COUNTS_PER_VOLT * (1 + errors.nextNormal() * spec.gainPartsPerMillion() / 2 * 1e-6);
    }

    /** The voltage at an input that nothing holds: jumps near its mean when it is let go, then wanders about it. */
    double drift(double meanVolts, double seconds, Randomness noise) {
        double moved = held ? 1 : Math.min(1, seconds / FLOAT_TAU_SECONDS);
        double kick = held ? 1 : Math.sqrt(2 * moved);
        held = false;
        floatVolts += (meanVolts - floatVolts) * moved + FLOAT_SPREAD_VOLTS * kick * noise.nextNormal();
        return floatVolts + FLOAT_HUM_VOLTS * noise.nextNormal();
    }

    /** Something holds the input. */
    void hold() {
        held = true;
    }

    void read(double volts, Effects effects, Randomness noise) {
        double drawn = noise.nextNormal() * noiseCounts;
        if (effects.voltsFrozen) {
            return;
        }
        if (!Double.isNaN(effects.absurdVolts)) {
            counts = (int) (effects.absurdVolts * COUNTS_PER_VOLT);
            state = Reading.VOLTS_VALID;
            return;
        }
        counts = convert(volts, drawn);
        boolean atRail = counts == highest || counts == lowest;
        state = atRail ? Reading.VOLTS_VALID | Reading.VOLTS_AT_RAIL : Reading.VOLTS_VALID;
    }

    /** Counts of a voltage with so much noise. */
    int convert(double volts, double drawnCounts) {
        int converted = (int) Math.rint(volts * countsPerVolt + offsetCounts + drawnCounts);
        return converted < lowest ? lowest : Math.min(converted, highest);
    }

    int counts() {
        return counts;
    }

    /** Bits of {@link Reading#state} that the voltage decides. */
    int state() {
        return state;
    }
}
