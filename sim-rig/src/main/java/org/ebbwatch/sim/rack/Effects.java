package org.ebbwatch.sim.rack;

/** What the faults that stand now do to one channel. */
final class Effects {
    static final double NONE = Double.POSITIVE_INFINITY;

    boolean leadOpen;
    boolean resistorAcross;
    boolean senseOpen;
    double floatVolts = 0.05;

    boolean loadLost;
    boolean loadStuck;
    double loadFactor = 1;

    double leakVolts;
    double leakOhms = NONE;
    double shortOhms = NONE;
    double warmingWatts;
    double runawayWatts;

    boolean tieLoose;
    double tieOhms;

    boolean sensorOff;
    boolean sensorOpen;
    boolean sensorOpenFlagged;
    boolean celsiusFrozen;
    double absurdCelsius = Double.NaN;
    boolean voltsFrozen;
    double absurdVolts = Double.NaN;
}
