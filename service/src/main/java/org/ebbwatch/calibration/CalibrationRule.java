package org.ebbwatch.calibration;

import java.util.Locale;
import java.util.Optional;

/**
 * What follows from three points, and what is refused as nonsense. Bounds are common practice, no source, unless said otherwise.
 *
 * <p>Shorted leads need no meter, so that the line is drawn through the shorted point and the high one, and the low one shows
 * how straight the channel is: it may lie off by what meter, noise and resolution explain (k = 2). If it lies off by more, the
 * line is drawn through the low and the high point, and what it leaves at shorted leads is the {@link Correction#bottomVolts}.
 *
 * <p>The uncertainty is made as JCGM 100 (GUM) makes it: the meter's half-widths, a half-width of one count, of the residual, and
 * of 0.1 % of the voltage for a year of drift as rectangular distributions (4.3.7), the readings' own deviation
 * (4.2), summed in squares (5.1.2), times 2.
 */
public final class CalibrationRule {
    /** What the meter shows at the low point. */
    public static final double LEAST_LOW_VOLTS = 0.3;

    public static final double MOST_LOW_VOLTS = 0.8;

    /** What the meter shows at the high point. */
    public static final double LEAST_HIGH_VOLTS = 3.0;

    public static final double MOST_HIGH_VOLTS = 4.5;

    /** Shorted leads that read more than this are not shorted. */
    public static final double MOST_SHORTED_VOLTS = 0.25;

    private static final double MOST_GAIN_OFF = 0.1;
    private static final double STEADY_COUNTS = 3;
    private static final double STEADY_VOLTS = 0.003;
    private static final double DRIFT_SHARE = 0.001;
    private static final double ROOT_3 = StrictMath.sqrt(3);

    private CalibrationRule() {}

    /**
     * The line and its doubts.
     *
     * @param residualVolts of the point farthest off it
     */
    public record Line(Correction correction, double residualVolts) {}

    /** Why readings cannot make a point; empty if they can. */
    public static Optional<String> unsteady(double deviationVolts, double driftVolts, double countVolts) {
        double most = Math.max(STEADY_VOLTS, STEADY_COUNTS * countVolts);
        return deviationVolts > most || Math.abs(driftVolts) > most
                ? Optional.of(text(
                        "the reading is not steady: it scatters by %.1f mV and drifts by %.1f mV, of %.1f mV allowed. Hold the"
                                + " clips still, look at the connections, and wait until it stands",
                        1e3 * deviationVolts, 1e3 * Math.abs(driftVolts), 1e3 * most))
                : Optional.empty();
    }

    /** Why this cannot be what shorted leads read; empty if it can. */
    public static Optional<String> notShorted(double readVolts) {
        return Math.abs(readVolts) > MOST_SHORTED_VOLTS
                ? Optional.of(text(
                        "the channel reads %.3f V: its leads are not shorted, or a cell is on them. Never short a cell."
                                + " Take the cell off, then clip the channel's two leads together",
                        readVolts))
                : Optional.empty();
    }

    /** Why low and high cannot both be right; empty if they can. */
    public static Optional<String> misfit(CalibrationPoint shorted, CalibrationPoint low, CalibrationPoint high) {
        double gain = (high.shownVolts() - low.shownVolts()) / (high.readVolts() - low.readVolts());
        if (!(Math.abs(gain - 1) <= MOST_GAIN_OFF)) {
            return Optional.of(text(
                    "between the two voltages the board reads %.3f V where the meter shows %.3f V: more than 10 %% off is no matter"
                            + " of calibration. Look at the channel, the meter's range and the divider, and correct the scale that"
                            + " the board or its profile states",
                    high.readVolts() - low.readVolts(), high.shownVolts() - low.shownVolts()));
        }
        double bottom = low.shownVolts() - gain * (low.readVolts() - shorted.readVolts());
        return Math.abs(bottom) > MOST_SHORTED_VOLTS
                ? Optional.of(text(
                        "by the two voltages shorted leads should read %.3f V away from where they do: a value was misread, or the"
                                + " channel cannot see small voltages at all. Take the points again",
                        bottom))
                : Optional.empty();
    }

    /**
     * What follows.
     *
     * @param countVolts the step of one count as the board states it
     */
    public static Line line(
            Meter meter, CalibrationPoint shorted, CalibrationPoint low, CalibrationPoint high, double countVolts) {
        double gain = high.shownVolts() / (high.readVolts() - shorted.readVolts());
        double off = gain * (low.readVolts() - shorted.readVolts()) - low.shownVolts();
        double noise = noise(shorted, low, high);
        double count = countVolts / ROOT_3;
        double explained = 2
                * root(
                        meter.expandedVolts(low.shownVolts()) / 2,
                        noise,
                        count,
                        low.shownVolts() * meter.share() / ROOT_3);
        return Math.abs(off) <= explained
                ? straight(meter, shorted, low, high, gain, Math.abs(off), root(noise, count))
                : bent(meter, shorted, low, high, root(noise, count));
    }

    private static Line straight(
            Meter meter,
            CalibrationPoint shorted,
            CalibrationPoint low,
            CalibrationPoint high,
            double gain,
            double residual,
            double floor) {
        double share = root(meter.share() / ROOT_3, meter.volts() / high.shownVolts() / ROOT_3, DRIFT_SHARE / ROOT_3);
        double offset = -gain * shorted.readVolts();
        var correction =
                new Correction(offset, gain, 2 * root(floor, residual / ROOT_3), 2 * share, 0, 0, low.shownVolts());
        return new Line(correction, residual);
    }

    private static Line bent(
            Meter meter, CalibrationPoint shorted, CalibrationPoint low, CalibrationPoint high, double floor) {
        double gain = (high.shownVolts() - low.shownVolts()) / (high.readVolts() - low.readVolts());
        double offset = low.shownVolts() - gain * low.readVolts();
        double bottom = offset + gain * shorted.readVolts();
        double share = root(meter.share() / ROOT_3, DRIFT_SHARE / ROOT_3);
        var correction = new Correction(
                offset,
                gain,
                2 * root(floor, meter.volts() / ROOT_3),
                2 * share,
                Math.abs(bottom),
                bottom,
                low.shownVolts());
        return new Line(correction, Math.abs(bottom));
    }

    /**
     * Whether the board's own scale holds within its own uncertainty and the meter's at every point, and is known better there than
     * the correction would be: then the board's word stands.
     *
     * @param own the board's own scale
     */
    public static boolean ownScaleHolds(
            BoardScale own, Meter meter, Correction correction, CalibrationPoint... points) {
        for (CalibrationPoint point : points) {
            double declared = own.expandedVolts(point.readVolts());
            double shown = point.shownVolts() == 0 ? 0 : meter.expandedVolts(point.shownVolts());
            double noise = 2 * point.deviationVolts() / StrictMath.sqrt(CalibrationPoint.READINGS);
            boolean agrees = Math.abs(point.readVolts() - point.shownVolts()) <= root(declared, shown, noise);
            boolean better = declared <= correction.expandedVolts(point.shownVolts(), own.resolutionVolts());
            if (!agrees || !better) {
                return false;
            }
        }
        return true;
    }

    private static double noise(CalibrationPoint... points) {
        double most = 0;
        for (CalibrationPoint point : points) {
            most = Math.max(most, point.deviationVolts());
        }
        return most;
    }

    private static double root(double... parts) {
        double sum = 0;
        for (double part : parts) {
            sum += part * part;
        }
        return StrictMath.sqrt(sum);
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
