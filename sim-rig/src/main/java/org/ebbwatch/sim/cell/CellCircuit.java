package org.ebbwatch.sim.cell;

/**
 * What hangs on one cell's terminals, as one conductance and one current source, and the search for the current that fits
 * both sides: Newton's method on a falling curve, kept inside a shrinking bracket, so that it always ends. Usually one or
 * two trials.
 */
public final class CellCircuit {
    private static final double VOLTS_CLOSE_ENOUGH = 1e-8;
    private static final int TRIALS_MOST = 60;

    private double siemens;
    private double sourceAmperes;
    private double amperes;

    /** Nothing on the terminals. */
    public void clear() {
        siemens = 0;
        sourceAmperes = 0;
    }

    /** Adds a resistor across the terminals; any number from 0 (a perfect short is not possible, 1 microohm is). */
    public void addOhms(double ohms) {
        siemens += 1 / Math.max(ohms, 1e-6);
    }

    /** Adds a source with a series resistance across the terminals. */
    public void addSource(double volts, double ohms) {
        addOhms(ohms);
        sourceAmperes += volts / Math.max(ohms, 1e-6);
    }

    /** Conductance across the terminals, siemens. */
    public double siemens() {
        return siemens;
    }

    /**
     * Finds the cell's current of the step it has begun, without ending it.
     *
     * @param throughAmperes a current that is forced through the cell by what it is in series with
     * @return the terminals' volts
     */
    public double settle(Cell cell, double throughAmperes) {
        double forced = throughAmperes - sourceAmperes;
        if (siemens == 0) {
            amperes = forced;
            cell.trial(forced);
            return cell.trialVolts();
        }
        double lowest = Double.NEGATIVE_INFINITY;
        double highest = Double.POSITIVE_INFINITY;
        for (int trial = 0; trial < TRIALS_MOST; trial++) {
            cell.trial(amperes);
            double excess = cell.trialVolts() * siemens + forced - amperes;
            double correction = excess / (1 + cell.trialOhms() * siemens);
            if (Math.abs(excess) < VOLTS_CLOSE_ENOUGH * siemens || Math.abs(correction) < 1e-12) {
                amperes += correction;
                break;
            }
            if (excess > 0) {
                lowest = amperes;
            } else {
                highest = amperes;
            }
            double next = amperes + correction;
            amperes = next > lowest && next < highest ? next : (lowest + highest) / 2;
        }
        return (amperes - forced) / siemens;
    }

    /** The cell's current that {@link #settle} found. */
    public double amperes() {
        return amperes;
    }
}
