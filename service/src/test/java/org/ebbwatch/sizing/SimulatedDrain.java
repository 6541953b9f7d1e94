package org.ebbwatch.sizing;

import org.ebbwatch.sim.cell.Cell;
import org.ebbwatch.sim.cell.CellCircuit;
import org.ebbwatch.sim.cell.CellSpec;

/** The simulator's own run of a cell through a resistor, in steps of two seconds. */
final class SimulatedDrain {
    private static final double STEP_SECONDS = 2;
    private static final double AIR_CELSIUS = 21;

    private final Cell cell;
    private final CellCircuit circuit = new CellCircuit();
    private final double ohms;
    private double seconds;

    SimulatedDrain(CellSpec spec, double ohms) {
        this.cell = new Cell(spec, 1, 1, AIR_CELSIUS);
        this.ohms = ohms;
        cell.setStep(STEP_SECONDS);
    }

    /** Hours from the beginning until the terminals show so many volts. */
    double hoursUntil(double volts) {
        do {
            cell.begin();
            circuit.clear();
            circuit.addOhms(ohms);
            circuit.settle(cell, 0);
            cell.finish(circuit.amperes());
            cell.warm(0, AIR_CELSIUS);
            seconds += STEP_SECONDS;
        } while (cell.volts() > volts);
        return seconds / 3600;
    }
}
