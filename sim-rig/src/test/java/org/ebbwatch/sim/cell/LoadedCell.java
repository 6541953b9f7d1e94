package org.ebbwatch.sim.cell;

import java.util.function.BooleanSupplier;

/** A cell in 21 degrees of air with one resistor across it, stepped and accounted for. */
final class LoadedCell {
    static final double AIR_CELSIUS = 21;

    final Cell cell;
    private final CellCircuit circuit = new CellCircuit();
    private final double stepSeconds;
    private double seconds;
    private double coulombs;
    private double loadJoules;

    LoadedCell(CellSpec spec, double stepSeconds) {
        cell = new Cell(spec, 1, 1, AIR_CELSIUS);
        this.stepSeconds = stepSeconds;
        cell.setStep(stepSeconds);
    }

    void step(double ohms) {
        cell.begin();
        circuit.clear();
        if (ohms < Double.POSITIVE_INFINITY) {
            circuit.addOhms(ohms);
        }
        circuit.settle(cell, 0);
        cell.finish(circuit.amperes());
        cell.warm(0, AIR_CELSIUS);
        seconds += stepSeconds;
        coulombs += cell.amperes() * stepSeconds;
        loadJoules += cell.volts() * cell.volts() / ohms * stepSeconds;
    }

    void rest(double hours) {
        run(hours, Double.POSITIVE_INFINITY);
    }

    void run(double hours, double ohms) {
        long steps = Math.round(hours * 3600 / stepSeconds);
        for (long i = 0; i < steps; i++) {
            step(ohms);
        }
    }

    /** Steps until it is so, for at most so many hours; says whether it came. */
    boolean runUntil(double ohms, double hoursMost, BooleanSupplier reached) {
        double end = seconds + hoursMost * 3600;
        while (!reached.getAsBoolean() && seconds < end) {
            step(ohms);
        }
        return reached.getAsBoolean();
    }

    /** Keeps the load on until the voltage under it has stayed below 0.10 V for so long. */
    void hold(double hours, double ohms) {
        double since = 0;
        while (since < hours * 3600) {
            step(ohms);
            since = cell.volts() < 0.10 ? since + stepSeconds : 0;
        }
    }

    double seconds() {
        return seconds;
    }

    double coulombs() {
        return coulombs;
    }

    double loadJoules() {
        return loadJoules;
    }
}
