package org.ebbwatch.judge.estimate;

import java.util.Optional;

/**
 * Weighted least squares of a level that rises to an end as one or two decays die away, and what it forecasts.
 */
final class WeightedFit {
    private static final double ALIKE = 1e-9;

    private final double[] weights;
    private final double[] levels;
    private final int size;
    private final double weight;
    private final double mean;
    private final double squares;

    /**
     * A fitted curve.
     *
     * @param misfit weighted sum of squared residuals
     * @param level forecast
     * @param variance of the forecast, for the weights as they are
     */
    record Curve(double misfit, double level, double variance) {}

    /** One decay: its values and its forecast about their weighted mean, and its products with itself and the levels. */
    record Basis(double[] values, double ahead, double own, double withLevels) {}

    WeightedFit(double[] levels, double[] weights, int size) {
        this.weights = weights;
        this.size = size;
        this.weight = sum(weights, null, null, size);
        this.mean = sum(weights, levels, null, size) / weight;
        this.levels = new double[size];
        for (int place = 0; place < size; place++) {
            this.levels[place] = levels[place] - mean;
        }
        this.squares = sum(weights, this.levels, this.levels, size);
    }

    Basis basis(double[] seconds, double untilSeconds, double tau, boolean stretched) {
        double[] values = new double[size];
        for (int place = 0; place < size; place++) {
            values[place] = decay(seconds[place] / tau, stretched);
        }
        double middle = sum(weights, values, null, size) / weight;
        for (int place = 0; place < size; place++) {
            values[place] -= middle;
        }
        double ahead = decay(untilSeconds / tau, stretched) - middle;
        return new Basis(values, ahead, sum(weights, values, values, size), sum(weights, values, levels, size));
    }

    private static double decay(double time, boolean stretched) {
        return StrictMath.exp(-(stretched ? StrictMath.sqrt(time) : time));
    }

    private static double sum(double[] first, double[] second, double[] third, int size) {
        double sum = 0;
        for (int place = 0; place < size; place++) {
            sum += first[place] * (second == null ? 1 : second[place]) * (third == null ? 1 : third[place]);
        }
        return sum;
    }

    /** With one decay; empty where the level falls. */
    Optional<Curve> fit(Basis only) {
        double amplitude = only.withLevels / only.own;
        return amplitude < 0
                ? Optional.of(new Curve(
                        squares - amplitude * only.withLevels,
                        mean + amplitude * only.ahead,
                        1 / weight + only.ahead * only.ahead / only.own))
                : Optional.empty();
    }

    /** With two decays; empty where either makes the level fall, or they cannot be told apart. */
    Optional<Curve> fit(Basis slow, Basis fast) {
        double both = sum(weights, slow.values, fast.values, size);
        double determinant = slow.own * fast.own - both * both;
        double slowRise = fast.own * slow.withLevels - both * fast.withLevels;
        double fastRise = slow.own * fast.withLevels - both * slow.withLevels;
        if (!(determinant > ALIKE * slow.own * fast.own) || slowRise > 0 || fastRise > 0) {
            return Optional.empty();
        }
        double misfit = squares - (slowRise * slow.withLevels + fastRise * fast.withLevels) / determinant;
        double level = mean + (slowRise * slow.ahead + fastRise * fast.ahead) / determinant;
        double spread = fast.own * slow.ahead * slow.ahead
                - 2 * both * slow.ahead * fast.ahead
                + slow.own * fast.ahead * fast.ahead;
        return Optional.of(new Curve(misfit, level, 1 / weight + spread / determinant));
    }
}
