package org.ebbwatch.judge.estimate;

/**
 * Charge and energy taken out of a cell: the trapezoidal integral of current, measured where it is known and else V / R.
 *
 * <p>A stretch longer than the pause allowed, or one that begins or ends without a reading, counts nothing: what was not
 * seen is not claimed.
 */
public final class ChargeMeter {
    private static final double SECONDS_PER_HOUR = 3600;

    private final double ohms;
    private double ampereHours;
    private double wattHours;
    private double lastAmperes = Double.NaN;
    private double lastWatts = Double.NaN;

    public ChargeMeter(double ohms) {
        this.ohms = ohms;
    }

    /**
     * Takes one reading on the load.
     *
     * @param volts at the terminals, NaN if not known
     * @param amperes through the load, NaN to use V / R
     * @param seconds since the reading before
     */
    public void onLoad(double volts, double amperes, double seconds) {
        double current = Double.isNaN(amperes) ? volts / ohms : amperes;
        double watts = volts * current;
        double charge = (lastAmperes + current) / 2 * seconds / SECONDS_PER_HOUR;
        double energy = (lastWatts + watts) / 2 * seconds / SECONDS_PER_HOUR;
        ampereHours += Double.isNaN(charge) ? 0 : charge;
        wattHours += Double.isNaN(energy) ? 0 : energy;
        lastAmperes = current;
        lastWatts = watts;
    }

    /** The load is off, or nothing is known of the time until the next reading. */
    public void interrupt() {
        lastAmperes = Double.NaN;
        lastWatts = Double.NaN;
    }

    public double ampereHours() {
        return ampereHours;
    }

    public double wattHours() {
        return wattHours;
    }
}
