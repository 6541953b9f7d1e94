package org.ebbwatch.judge.estimate;

import java.util.Optional;
import java.util.function.DoubleSupplier;

/**
 * Internal resistance of a cell from the step of its voltage when the load goes on: (V0 - V1) / (I1 - I0), with V1 the first
 * reading at least half a second after the last one before (a direct-current resistance of about one second; the sag that
 * goes on is diffusion, not resistance).
 *
 * <p>V0 is a mean over the last few open readings. The uncertainty is
 * that of the difference of two readings and that of the current. No value is given where the step does not stand out of
 * the noise, or the last open reading is older than twelve seconds. Constant memory: nine numbers.
 */
public final class StepResistance {
    private static final long LEAST_MILLIS = 500;
    private static final long LONGEST_MILLIS = 12_000;
    private static final double OPEN_WEIGHT = 0.25;

    private final DoubleSupplier loadShare;
    private double openVolts = Double.NaN;
    private double openAmperes;
    private long openMillis;
    private boolean due;
    private double internalOhms = Double.NaN;
    private double expandedInternalOhms = Double.NaN;
    private long foundMillis;

    /**
     * What the last step showed.
     *
     * @param ohms internal resistance after about a second
     * @param expandedOhms its expanded uncertainty (k = 2)
     * @param millis when it was found
     */
    public record Step(double ohms, double expandedOhms, long millis) {}

    /** @param expandedLoadShare expanded uncertainty (k = 2) of the load, relative, which may become another */
    public StepResistance(DoubleSupplier expandedLoadShare) {
        this.loadShare = expandedLoadShare;
    }

    /** Takes one believable reading with nothing across the cell; a current not measured is 0. */
    public void open(long millis, double volts, double amperes) {
        openVolts = Double.isNaN(openVolts) ? volts : openVolts + OPEN_WEIGHT * (volts - openVolts);
        openAmperes = Double.isNaN(amperes) ? 0 : amperes;
        openMillis = millis;
        due = true;
    }

    /**
     * Takes one believable reading on the load.
     *
     * @param amperes measured or volts over ohms, NaN where neither is known
     * @param expandedDifferenceVolts expanded uncertainty (k = 2) of the difference of two readings
     */
    public void loaded(long millis, double volts, double amperes, double expandedDifferenceVolts) {
        if (!due || millis - openMillis < LEAST_MILLIS) {
            return;
        }
        double step = openVolts - volts;
        double current = amperes - openAmperes;
        if (millis - openMillis <= LONGEST_MILLIS && step > expandedDifferenceVolts && current > 0) {
            double voltsShare = expandedDifferenceVolts / step;
            double share = loadShare.getAsDouble();
            internalOhms = step / current;
            expandedInternalOhms = internalOhms * StrictMath.sqrt(voltsShare * voltsShare + share * share);
            foundMillis = millis;
        }
        interrupt();
    }

    /** Readings before and after cannot be compared. */
    public void interrupt() {
        openVolts = Double.NaN;
        due = false;
    }

    /** The latest resistance, NaN before the first. */
    public double ohms() {
        return internalOhms;
    }

    /** The latest; empty before the first. */
    public Optional<Step> latest() {
        return Double.isNaN(internalOhms)
                ? Optional.empty()
                : Optional.of(new Step(internalOhms, expandedInternalOhms, foundMillis));
    }
}
