package org.ebbwatch.judge.estimate;

import java.util.Optional;
import org.ebbwatch.judge.estimate.RestCurve.Points;

/**
 * What the voltage of a resting cell comes back to, as a 95 % prediction interval.
 *
 * <p>Some sixty curves are fitted to the recovery so far by weighted least squares: one or two exponentials, or a stretched
 * exponential (exponent one half) with a faster exponential, each over a ladder of time constants from a thirtieth of the
 * time rested to 72 h. Each counts by how well it fits (Bayesian model averaging with equal prior weights, from memory);
 * the interval runs from the 2.5 to the 97.5 per cent quantile of what they forecast together. A rise may have any size;
 * a fall counts for nothing. Only the last decade of the time rested is fitted: what was quick has passed.
 *
 * <p>No sum of exponentials is a cell. The curves are therefore held against the readings with a tolerance of 1 % of the
 * rise at ten minutes, growing with the root of time; it was chosen so that the interval holds 95 % of 1,500 simulated
 * nights of both relaxation families (docs/estimators.md). It is wide, and honestly so: ten minutes of rest say little of a
 * day.
 *
 * @param volts the median
 * @param lowestVolts the lower end of the interval
 * @param highestVolts the upper end
 * @param form which kind of curve the readings speak for
 */
public record RestFit(double volts, double lowestVolts, double highestVolts, Form form) {
    private static final double WINDOW = 0.1;
    private static final int LEAST_POINTS = 8;
    private static final double LEAST_TAU_SHARE = 0.03;
    private static final double MOST_TAU_SECONDS = 72 * 3600;
    private static final double TAU_RATIO = 2;
    private static final double TOLERANCE = 0.01;
    private static final double TOLERANCE_SECONDS = 600;
    private static final double LEAST_VARIANCE = 1e-12;
    private static final double CEILING_VOLTS = 3.7;
    private static final double CEILING_RISE_VOLTS = 0.15;

    /** A kind of curve. */
    public enum Form {
        FLAT,
        ONE_EXPONENTIAL,
        TWO_EXPONENTIALS,
        STRETCHED
    }

    /**
     * Forecasts the voltage so long after the load came off; empty with too few readings.
     *
     * @param untilSeconds since the load came off
     * @param deviationVolts standard deviation of the noise of one reading
     */
    public static Optional<RestFit> of(RestCurve curve, double untilSeconds, double deviationVolts) {
        Points points = curve.since(WINDOW);
        if (points.size() < LEAST_POINTS || untilSeconds <= points.lastSeconds()) {
            return Optional.empty();
        }
        Mixture mixture = fitted(points, untilSeconds, deviationVolts);
        return Optional.of(mixture.isEmpty() ? flat(points, untilSeconds, deviationVolts) : of(mixture));
    }

    private static RestFit of(Mixture mixture) {
        return new RestFit(mixture.quantile(0.5), mixture.quantile(0.025), mixture.quantile(0.975), mixture.form());
    }

    /** Nothing rises: what noise could hide goes on straight. */
    private static RestFit flat(Points points, double untilSeconds, double deviationVolts) {
        double last = points.lastVolts();
        double mean = deviationVolts / StrictMath.sqrt(points.counts()[points.size() - 1]);
        double hidden = 2 * mean * untilSeconds / points.lastSeconds() + deviationVolts;
        return new RestFit(last, last - hidden, last + hidden, Form.FLAT);
    }

    private static Mixture fitted(Points points, double untilSeconds, double deviationVolts) {
        double last = points.lastVolts();
        var line = new WeightedFit(points.volts(), weights(points, deviationVolts), points.size());
        var mixture = new Mixture(Math.max(CEILING_VOLTS, last + CEILING_RISE_VOLTS), points.size() - 4);
        int rungs = 1
                + (int) (StrictMath.log(MOST_TAU_SECONDS / (LEAST_TAU_SHARE * points.lastSeconds()))
                        / StrictMath.log(TAU_RATIO));
        WeightedFit.Basis[] exponential = new WeightedFit.Basis[Math.max(1, rungs)];
        for (int rung = 0; rung < exponential.length; rung++) {
            double tau = LEAST_TAU_SHARE * points.lastSeconds() * StrictMath.pow(TAU_RATIO, rung);
            exponential[rung] = line.basis(points.seconds(), untilSeconds, tau, false);
            var stretched = line.basis(points.seconds(), untilSeconds, tau, true);
            mixture.add(line.fit(exponential[rung]), Form.ONE_EXPONENTIAL);
            mixture.add(line.fit(stretched), Form.STRETCHED);
            for (int faster = 0; faster < rung; faster++) {
                mixture.add(line.fit(exponential[rung], exponential[faster]), Form.TWO_EXPONENTIALS);
                mixture.add(line.fit(stretched, exponential[faster]), Form.STRETCHED);
            }
        }
        mixture.weigh();
        return mixture;
    }

    private static double[] weights(Points points, double deviationVolts) {
        double rise = points.lastVolts() - points.volts()[0];
        double tolerance = rise * TOLERANCE * StrictMath.sqrt(points.lastSeconds() / TOLERANCE_SECONDS);
        double[] weights = new double[points.size()];
        for (int place = 0; place < weights.length; place++) {
            double noise = deviationVolts * deviationVolts / points.counts()[place];
            weights[place] = 1 / (noise + tolerance * tolerance + LEAST_VARIANCE);
        }
        return weights;
    }
}
