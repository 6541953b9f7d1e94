package org.ebbwatch.sizing;

/**
 * A cell that empties through a resistor, worked out once for every resistor: open-circuit voltage and resistance along the charge, so
 * that a load costs one pass of sums. Trapezoids, 0.001 % of charge wide below 6 % and 0.1 % above.
 */
final class Discharge {
    private static final double FINE = 1e-5;
    private static final double COARSE = 1e-3;
    private static final double FINE_BELOW = 0.06;

    private final double ampereHours;
    private final double[] stateOfCharge;
    private final double[] volts;
    private final double[] ohms;

    /** A cell that begins at this state of charge, 1 at most. */
    Discharge(AgedCell cell, double from) {
        double bottom = cell.openCircuit().bottom();
        double top = Math.min(1, from);
        double bend = Math.min(top, FINE_BELOW);
        int coarse = (int) Math.ceil((top - bend) / COARSE);
        int fine = (int) Math.ceil((bend - bottom) / FINE);
        ampereHours = cell.ampereHours();
        stateOfCharge = new double[coarse + fine];
        volts = new double[coarse + fine];
        ohms = new double[coarse + fine];
        for (int i = 0; i < coarse + fine; i++) {
            double at = i < coarse ? top - i * (top - bend) / coarse : bend - (i - coarse) * (bend - bottom) / fine;
            stateOfCharge[i] = at;
            volts[i] = cell.openCircuit().volts(at);
            ohms[i] = cell.slowOhms(at);
        }
    }

    /**
     * How it stands when its terminals show so many volts under the load.
     *
     * @param hours since the load was put on
     * @param ampereHours that were taken out
     * @param loadWattHours that became heat in the resistor
     * @param cellWattHours that became heat in the cell
     */
    record Reached(double hours, double ampereHours, double loadWattHours, double cellWattHours) {}

    /**
     * Until the terminals show so many volts under the load.
     *
     * @param loadOhms across this one cell
     * @param landmarkVolts above 0
     */
    Reached until(double loadOhms, double landmarkVolts) {
        double hours = 0;
        double loadWattHours = 0;
        double cellWattHours = 0;
        double taken = 0;
        for (int i = 1; i < volts.length && terminal(i - 1, loadOhms) > landmarkVolts; i++) {
            double step = (stateOfCharge[i - 1] - stateOfCharge[i]) * ampereHours * part(i, loadOhms, landmarkVolts);
            hours += step * (1 / amperes(i - 1, loadOhms) + 1 / amperes(i, loadOhms)) / 2;
            double terminal = (terminal(i - 1, loadOhms) + terminal(i, loadOhms)) / 2;
            loadWattHours += step * terminal;
            cellWattHours += step * ((volts[i - 1] + volts[i]) / 2 - terminal);
            taken += step;
        }
        return new Reached(hours, taken, loadWattHours, cellWattHours);
    }

    /** Current in the first moment, amperes. */
    double firstAmperes(double loadOhms) {
        return amperes(0, loadOhms);
    }

    /** Energy the rested cell holds above 0 V, watt hours. */
    double heldWattHours() {
        double sum = 0;
        for (int i = 1; i < volts.length; i++) {
            sum += (stateOfCharge[i - 1] - stateOfCharge[i]) * ampereHours * (volts[i - 1] + volts[i]) / 2;
        }
        return sum;
    }

    /** How much of the step before this point lies above the landmark. */
    private double part(int i, double loadOhms, double landmarkVolts) {
        double before = terminal(i - 1, loadOhms);
        double after = terminal(i, loadOhms);
        return after >= landmarkVolts ? 1 : (before - landmarkVolts) / (before - after);
    }

    private double amperes(int i, double loadOhms) {
        return volts[i] / (loadOhms + ohms[i]);
    }

    private double terminal(int i, double loadOhms) {
        return loadOhms * amperes(i, loadOhms);
    }
}
