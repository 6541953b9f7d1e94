package org.ebbwatch.judge;

import java.util.Optional;
import org.ebbwatch.judge.estimate.SelfHeating;
import org.ebbwatch.judge.estimate.StepResistance;

/**
 * What a cell's own current does to its temperature: its internal resistance, from the step when the load went on, times the
 * square of the current. Off its load a rise means something else for sure; on it, where its own warmth has settled: an hour
 * after the load went on (three time constants of a cell) and above the fall at the end, where its resistance grows.
 */
final class OwnWarmth {
    private static final long SETTLED_MILLIS = 3_600_000;

    private final StepResistance resistance;
    private final SelfHeating heating;
    private final double plateauVolts;
    private boolean onLoad;
    private boolean settled;
    private long loadedMillis;

    OwnWarmth(LoadedCell cell) {
        this.resistance = new StepResistance(cell::expandedLoadShare);
        this.heating = new SelfHeating(cell.ratedAmpereHours());
        this.plateauVolts = cell.chemistry().plateauVolts();
    }

    /**
     * Follows one reading of a cell that is not bonded.
     *
     * @param amperes through the load, NaN where they are not known
     */
    void follow(Reading now, double amperes, LoadWatch load) {
        onLoad = load.isOn();
        loadedMillis = onLoad && !now.switched() ? loadedMillis + now.stepMillis() : 0;
        settled = loadedMillis >= SETTLED_MILLIS && now.volts() > plateauVolts;
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
        loadedMillis = 0;
    }

    /** Whether its own current cannot be warming the cell any further just now. */
    boolean isSteady() {
        return !onLoad || settled;
    }

    /** How much warmer than the room its own current has made it; 0 where its resistance is not known. */
    double kelvin() {
        return heating.kelvin();
    }

    Optional<StepResistance.Step> resistance() {
        return resistance.latest();
    }
}
