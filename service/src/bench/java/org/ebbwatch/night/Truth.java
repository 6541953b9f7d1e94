package org.ebbwatch.night;

import org.ebbwatch.judge.Judge;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.sim.rack.Glance;

/**
 * What is really the case on a channel at one scan, and where its passage stood before that scan was judged.
 *
 * @param glance of the channel
 * @param airCelsius of the room, sun and all
 * @param dummyCelsius the dummy cell's, NaN where there is none
 * @param bankCelsius the resistor bank's
 * @param bonded whether the judge takes the leads for bonded
 * @param loadOn whether the judge takes the load for on
 * @param announced whether a person's window is open
 */
record Truth(
        long millis,
        Stage stage,
        Phase phase,
        Glance glance,
        double airCelsius,
        double dummyCelsius,
        double bankCelsius,
        boolean bonded,
        boolean loadOn,
        boolean announced) {

    static Truth of(long millis, Glance glance, double air, double dummy, double bank, Judge judge, boolean announced) {
        Stage stage = Stage.of(judge, glance.leadVolts());
        return new Truth(
                millis, stage, judge.phase(), glance, air, dummy, bank, judge.isBonded(), judge.isLoadOn(), announced);
    }

    double leadVolts() {
        return glance.leadVolts();
    }

    double excessKelvin() {
        return glance.sensorCelsius() - airCelsius;
    }

    private boolean isCompared() {
        return stage == Stage.TIED && !Double.isNaN(dummyCelsius);
    }

    /** Over the dummy cell while bonded and where there is one, else over ambient. */
    double overReferenceKelvin() {
        return glance.sensorCelsius() - (isCompared() ? dummyCelsius : airCelsius);
    }

    double wideningKelvin(double withoutDummyKelvin) {
        return isCompared() ? 0 : withoutDummyKelvin;
    }
}
