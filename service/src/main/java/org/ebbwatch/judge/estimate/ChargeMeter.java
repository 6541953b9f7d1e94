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
        double hours = seconds / SECONDS_PER_HOUR;
        ampereHours += known((lastAmperes + current) / 2 * hours);
        wattHours += known((lastWatts + watts) / 2 * hours);
        lastAmperes = current;
        lastWatts = watts;
    }

    private static double known(double amount) {
        return Double.isNaN(amount) ? 0 : amount;
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
