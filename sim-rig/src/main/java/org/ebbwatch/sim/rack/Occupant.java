package org.ebbwatch.sim.rack;

import org.ebbwatch.sim.cell.Arrival;
import org.ebbwatch.sim.cell.Cell;

/** A cell with what goes with it from channel to channel: polarity, protection board, bond, container. */
final class Occupant {
    /** A one-cell protection board takes so many times the rated current for a short and opens. Order of magnitude, no source. */
    private static final double SHORT_C_RATE = 8;

    final Cell cell;
    boolean reversed;
    boolean tripped;
    boolean bonded;
    boolean insulated;
    boolean contained;

    Occupant(Cell cell) {
        this.cell = cell;
        reversed = cell.spec().reversed();
    }

    /** Whether current can flow between cell and leads. */
    boolean isConnectedInside() {
        return !tripped && cell.spec().arrival() != Arrival.DISCONNECTED;
    }

    /** 1, or -1 for a cell the wrong way round. */
    int polarity() {
        return reversed ? -1 : 1;
    }

    /** Lets the protection board act on what flowed through it in the last step. */
    void guard(double outsideAmperes, double chargerVolts) {
        double cutOff = cell.spec().cutOffVolts();
        if (tripped) {
            tripped = !(chargerVolts > cell.volts());
        } else if (cutOff > 0) {
            boolean low = cell.volts() < cutOff && outsideAmperes >= 0;
            boolean shorted = outsideAmperes > SHORT_C_RATE * cell.spec().ratedAmpereHours();
            tripped = low || shorted;
        }
    }
}
