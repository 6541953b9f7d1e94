package org.ebbwatch.judge;

import java.util.Optional;
import org.ebbwatch.judge.estimate.SelfHeating;
import org.ebbwatch.judge.estimate.StepResistance;

/**
 * What a cell's own current does to its temperature: its internal resistance, from the step when the load went on, times the
 * square of the current. Only off its load does a rise mean something else for sure.
 */
final class OwnWarmth {
    private final StepResistance resistance;
    private final SelfHeating heating;
    private boolean onLoad;

    OwnWarmth(LoadedCell cell) {
        this.resistance = new StepResistance(cell::expandedLoadShare);
        this.heating = new SelfHeating(cell.ratedAmpereHours());
    }

    /**
     * Follows one reading of a cell that is not bonded.
     *
     * @param amperes through the load, NaN where they are not known
     */
    void follow(Reading now, double amperes, LoadWatch load) {
        onLoad = load.isOn();
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

    /** Whether its own current cannot be warming the cell just now. */
    boolean isSteady() {
        return !onLoad;
    }

    /** How much warmer than the room its own current has made it; 0 where its resistance is not known. */
    double kelvin() {
        return heating.kelvin();
    }

    Optional<StepResistance.Step> resistance() {
        return resistance.latest();
    }
}
