package org.ebbwatch.sizing;

/**
 * A cell that empties through a resistor. It is followed along its charge, not along time: each step takes a small share of the
 * charge and asks how long that took, so that the steps are short where the voltage falls steeply. Open-circuit voltage and resistance
 * along the charge are worked out once for every resistor. Steps of 0.001 % of charge below 6 % and of 0.1 % above.
 */
final class Discharge {
    private static final double FINE = 1e-5;
    private static final double COARSE = 1e-3;
    private static final double FINE_BELOW = 0.06;
    private static final double LAG_HOURS = AgedCell.LAG_SECONDS / 3600;

    private final double ampereHours;
    private final double[] stateOfCharge;
    private final double[] volts;
    private final double[] promptOhms;
    private final double[] laggingOhms;

    /** A rested cell that begins at this state of charge, 1 at most. */
    Discharge(AgedCell cell, double from) {
        double bottom = cell.openCircuit().bottom();
        double top = Math.min(1, from);
        double bend = Math.min(top, FINE_BELOW);
        int coarse = (int) Math.ceil((top - bend) / COARSE);
        int fine = (int) Math.ceil((bend - bottom) / FINE);
        ampereHours = cell.ampereHours();
        stateOfCharge = new double[coarse + fine];
        volts = new double[coarse + fine];
        promptOhms = new double[coarse + fine];
        laggingOhms = new double[coarse + fine];
        for (int i = 0; i < coarse + fine; i++) {
            double at = i < coarse ? top - i * (top - bend) / coarse : bend - (i - coarse) * (bend - bottom) / fine;
            stateOfCharge[i] = at;
            volts[i] = cell.openCircuit().volts(at);
            promptOhms[i] = cell.promptOhms(at);
            laggingOhms[i] = cell.laggingOhms(at);
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
        double laggingVolts = 0;
        double before = volts[0] * loadOhms / (loadOhms + promptOhms[0]);
        for (int i = 1; i < volts.length && before > landmarkVolts; i++) {
            double step = (stateOfCharge[i - 1] - stateOfCharge[i]) * ampereHours;
            double amperes = before / loadOhms;
            double staying = StrictMath.exp(-step / amperes / LAG_HOURS);
            laggingVolts = laggingVolts * staying + amperes * laggingOhms[i] * (1 - staying);
            double after = (volts[i] - laggingVolts) * loadOhms / (loadOhms + promptOhms[i]);
            double share = after >= landmarkVolts ? 1 : (before - landmarkVolts) / (before - after);
            double terminal = (before + Math.max(after, landmarkVolts)) / 2;
            hours += share * step * loadOhms / terminal;
            loadWattHours += share * step * terminal;
            cellWattHours += share * step * ((volts[i - 1] + volts[i]) / 2 - terminal);
            taken += share * step;
            before = after;
        }
        return new Reached(hours, taken, loadWattHours, cellWattHours);
    }

    /** Energy the rested cell holds above 0 V, watt hours. */
    double heldWattHours() {
        double sum = 0;
        for (int i = 1; i < volts.length; i++) {
            sum += (stateOfCharge[i - 1] - stateOfCharge[i]) * ampereHours * (volts[i - 1] + volts[i]) / 2;
        }
        return sum;
    }
}
