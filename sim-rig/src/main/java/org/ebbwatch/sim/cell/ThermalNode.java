package org.ebbwatch.sim.cell;

/**
 * One lump of heat capacity behind one thermal resistance, stepped exactly for power and surroundings constant over the step.
 */
public final class ThermalNode {
    private final double joulesPerKelvin;
    private final double kelvinPerWatt;
    private double stepSeconds;
    private double staying;
    private double celsius;
    private double lostJoules;

    /** @param celsius temperature to begin with */
    public ThermalNode(double joulesPerKelvin, double kelvinPerWatt, double celsius) {
        this.joulesPerKelvin = joulesPerKelvin;
        this.kelvinPerWatt = kelvinPerWatt;
        this.celsius = celsius;
    }

    /** Fixes the length of the steps to come. */
    public void setStep(double seconds) {
        stepSeconds = seconds;
        staying = StrictMath.exp(-seconds / (joulesPerKelvin * kelvinPerWatt));
    }

    /** One step with so much heat put in and these surroundings. */
    public void step(double joules, double surroundingsCelsius) {
        double end = surroundingsCelsius + joules / stepSeconds * kelvinPerWatt;
        double before = celsius;
        celsius = end + (before - end) * staying;
        lostJoules += joules - joulesPerKelvin * (celsius - before);
    }

    public double celsius() {
        return celsius;
    }

    public double joulesPerKelvin() {
        return joulesPerKelvin;
    }

    /** Heat given to the surroundings since the beginning, joules. */
    public double lostJoules() {
        return lostJoules;
    }
}
