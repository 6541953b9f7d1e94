package org.ebbwatch.night;

import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.sim.cell.Cell;
import org.ebbwatch.sim.cell.CellCircuit;

/**
 * A cell drained and rested in rounds by its voltage alone, without judge, noise, forecast or person: on its load until it has
 * been below the drain limit for the hold, then open until it has rested for long enough or comes back.
 *
 * @param hours from the first load-on to a rest that was passed; infinite where there was none by then
 * @param returns how often it went on its load again
 */
record BareRounds(double hours, int returns) {
    private static final double STEP_SECONDS = 60;
    private static final double STEP_HOURS = STEP_SECONDS / 3600;
    private static final double LONGEST_HOURS = 15 * 24;
    private static final double MILLIS_PER_HOUR = 3.6e6;
    private static final double ROOM_CELSIUS = 20;

    /**
     * Goes through them.
     *
     * @param holdHours of the first round; 0 for straight off
     * @param doubles whether each further hold is twice as long
     */
    static BareRounds of(CellPlan plan, Procedure procedure, double holdHours, boolean doubles) {
        Cell cell = new Cell(plan.spec(), 1, 1, ROOM_CELSIUS);
        cell.setStep(STEP_SECONDS);
        double restHours = procedure.rest().leastMillis() / MILLIS_PER_HOUR;
        double hold = holdHours;
        double held = 0;
        double rested = 0;
        boolean loaded = true;
        int returns = 0;
        CellCircuit circuit = new CellCircuit();
        circuit.addOhms(plan.loadOhms());
        for (double hours = 0; hours < LONGEST_HOURS; hours += STEP_HOURS) {
            cell.begin();
            double volts = circuit.settle(cell, 0);
            cell.finish(circuit.amperes());
            if (loaded) {
                boolean below = volts < procedure.drain().limitVolts();
                held = below ? held + STEP_HOURS : 0;
                if (below && held >= hold) {
                    loaded = false;
                    rested = 0;
                    circuit.clear();
                }
            } else {
                rested += STEP_HOURS;
                if (volts >= procedure.rest().limitVolts()) {
                    loaded = true;
                    returns++;
                    held = 0;
                    hold = doubles ? 2 * hold : hold;
                    circuit.addOhms(plan.loadOhms());
                } else if (rested >= restHours) {
                    return new BareRounds(hours + STEP_HOURS, returns);
                }
            }
        }
        return new BareRounds(Double.POSITIVE_INFINITY, returns);
    }
}
