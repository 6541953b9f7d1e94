package org.ebbwatch.judge.estimate;

import java.util.function.DoubleSupplier;

/**
 * Charge and energy taken out of a cell, and their expanded uncertainties (k = 2): the integral of current, measured where it
 * is and else worked out from volts and ohms, for quantities that go straight from one reading to the next.
 *
 * <p>What the uncertainty of the voltage and that of the load bring are each taken to be the same at every reading, so they
 * add up over time and then to each other in quadrature (JCGM 100, 5.1.2 and 5.2.2). The noise of single readings averages
 * out over hours and is left away. A stretch longer than the pause allowed, or one that begins or ends without a reading,
 * counts nothing: what was not seen is not claimed, and no uncertainty is given for it.
 *
 * <p>Constant memory: eleven numbers.
 */
public final class ChargeMeter {
    private static final double SECONDS_PER_HOUR = 3600;
    /** A measured current is taken to be known to 1 % (k = 2): common practice, no source. */
    private static final double EXPANDED_AMPERES_SHARE = 0.01;

    private final DoubleSupplier loadShare;
    private double ampereHours;
    private double wattHours;
    private double chargeByVolts;
    private double chargeByLoad;
    private double energyByVolts;
    private double energyByLoad;
    private double lastVolts = Double.NaN;
    private double lastAmperes = Double.NaN;
    private double lastChargeByVolts;
    private double lastEnergyByVolts;

    /** @param expandedLoadShare expanded uncertainty (k = 2) of load and leads together, relative, which may become another */
    public ChargeMeter(DoubleSupplier expandedLoadShare) {
        this.loadShare = expandedLoadShare;
    }

    /**
     * Takes one reading on the load.
     *
     * @param volts at the terminals, NaN if not known
     * @param expandedVolts expanded uncertainty (k = 2) of {@code volts}
     * @param amperes through the load, NaN if not known
     * @param measured whether {@code amperes} were; otherwise they are volts over ohms
     * @param seconds since the reading before
     */
    public void onLoad(double volts, double expandedVolts, double amperes, boolean measured, double seconds) {
        double byVolts = measured ? 0 : amperes * expandedVolts / Math.max(Math.abs(volts), expandedVolts);
        double wattsByVolts = (measured ? 1 : 2) * amperes * expandedVolts;
        double hours = seconds / SECONDS_PER_HOUR;
        double charge = (lastAmperes + amperes) / 2 * hours;
        if (!Double.isNaN(charge)) {
            double share = measured ? EXPANDED_AMPERES_SHARE : loadShare.getAsDouble();
            ampereHours += charge;
            chargeByVolts += (lastChargeByVolts + byVolts) / 2 * hours;
            chargeByLoad += charge * share;
            double energy = energy(volts, amperes) * hours;
            if (!Double.isNaN(energy)) {
                wattHours += energy;
                energyByVolts += (lastEnergyByVolts + wattsByVolts) / 2 * hours;
                energyByLoad += energy * share;
            }
        }
        lastVolts = volts;
        lastAmperes = amperes;
        lastChargeByVolts = byVolts;
        lastEnergyByVolts = Double.isNaN(wattsByVolts) ? 0 : wattsByVolts;
    }

    /** Mean power of a stretch over which volts and amperes go straight: the integral of the product of two lines. */
    private double energy(double volts, double amperes) {
        return (2 * (lastVolts * lastAmperes + volts * amperes) + lastVolts * amperes + volts * lastAmperes) / 6;
    }

    /** The load is off, or nothing is known of the time until the next reading. */
    public void interrupt() {
        lastVolts = Double.NaN;
        lastAmperes = Double.NaN;
    }

    public double ampereHours() {
        return ampereHours;
    }

    /** Expanded uncertainty (k = 2) of what was seen to flow. */
    public double expandedAmpereHours() {
        return StrictMath.sqrt(chargeByVolts * chargeByVolts + chargeByLoad * chargeByLoad);
    }

    /** The same as a share of the charge; 0 before any. */
    public double expandedShare() {
        return ampereHours > 0 ? expandedAmpereHours() / ampereHours : 0;
    }

    public double wattHours() {
        return wattHours;
    }

    /** Expanded uncertainty (k = 2) of what was seen to flow. */
    public double expandedWattHours() {
        return StrictMath.sqrt(energyByVolts * energyByVolts + energyByLoad * energyByLoad);
    }
}
