package org.ebbwatch.judge;

import java.util.Optional;
import org.ebbwatch.judge.estimate.SelfHeating;
import org.ebbwatch.judge.estimate.StepResistance;

/**
 * What a cell's own current does to its temperature: its internal resistance, from the step when the load went on, times the
 * square of the current. Steady is a cell off its load, and one that has been on it for an hour and is well above its knee,
 * where resistance hardly changes; only then does a rise mean something else. Common practice, no source.
 */
final class OwnWarmth {
    private static final long SETTLED_MILLIS = 3_600_000;
    private static final double ABOVE_KNEE_VOLTS = 0.9;

    private final StepResistance resistance;
    private final SelfHeating heating;
    private final double plateauVolts;
    private boolean onLoad;
    private boolean onPlateau;
    private long switchedMillis;

    /** @param expandedShare expanded uncertainty (k = 2) of the load, relative */
    OwnWarmth(LoadedCell cell, double expandedShare) {
        this.resistance = new StepResistance(expandedShare);
        this.heating = new SelfHeating(cell.ratedAmpereHours());
        this.plateauVolts = cell.chemistry().kneeVolts() + ABOVE_KNEE_VOLTS;
    }

    /**
     * Follows one reading of a cell that is not bonded.
     *
     * @param amperes through the load, NaN where they are not known
     */
    void follow(Reading now, double amperes, LoadWatch load) {
        onLoad = load.isOn();
        onPlateau = now.volts() > plateauVolts;
        switchedMillis = load.switchedMillis();
        if (now.isKnown() && onLoad) {
            resistance.loaded(now.atMillis(), now.volts(), amperes, now.differenceVolts());
        } else if (now.isKnown()) {
            resistance.open(now.atMillis(), now.volts(), amperes);
        }
        double ohms = resistance.ohms();
        boolean warms = onLoad && !Double.isNaN(amperes) && !Double.isNaN(ohms);
        heating.add(warms ? amperes : 0, warms ? ohms : 0, now.stepMillis() / 1000.0);
    }

    /** Readings before and after cannot be compared. */
    void interrupted() {
        resistance.interrupt();
    }

    /** Whether nothing about the load can be warming the cell just now. */
    boolean isSteady(long millis) {
        return !onLoad || (onPlateau && millis - switchedMillis >= SETTLED_MILLIS);
    }

    /** How much warmer than the room its own current has made it; 0 where its resistance is not known. */
    double kelvin() {
        return heating.kelvin();
    }

    Optional<StepResistance.Step> resistance() {
        return resistance.latest();
    }
}
