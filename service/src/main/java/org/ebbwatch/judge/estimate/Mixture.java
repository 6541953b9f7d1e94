package org.ebbwatch.judge.estimate;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.judge.estimate.RestFit.Form;
import org.ebbwatch.judge.estimate.WeightedFit.Curve;

/** What many fitted curves forecast together, each weighed by how well it fits. */
final class Mixture {
    private static final double NEGLIGIBLE = 1e-5;
    private static final int HALVINGS = 40;
    private static final double LOWEST_VOLTS = -6;
    private static final double HIGHEST_VOLTS = 6;

    private final double ceilingVolts;
    private final int freedom;
    private final List<Curve> curves = new ArrayList<>();
    private final List<Form> forms = new ArrayList<>();
    private double[] weights = {};
    private double[] means = {};
    private double[] deviations = {};
    private Form form = Form.FLAT;

    /**
     * @param ceilingVolts no cell comes back to more
     * @param freedom readings less what a curve can choose, at least 1
     */
    Mixture(double ceilingVolts, int freedom) {
        this.ceilingVolts = ceilingVolts;
        this.freedom = freedom;
    }

    void add(Optional<Curve> curve, Form its) {
        curve.ifPresent(fitted -> {
            curves.add(fitted);
            forms.add(its);
        });
    }

    boolean isEmpty() {
        return curves.isEmpty();
    }

    /** All curves are there: weighs them. Where even the best misses by more than the tolerance, the tolerance grows. */
    void weigh() {
        double best = Double.POSITIVE_INFINITY;
        for (Curve curve : curves) {
            best = Math.min(best, curve.misfit());
        }
        double scale = Math.max(1, best / freedom);
        Map<Form, Double> shares = new EnumMap<>(Form.class);
        weights = new double[curves.size()];
        means = new double[weights.length];
        deviations = new double[weights.length];
        double total = 0;
        int kept = 0;
        for (int place = 0; place < weights.length; place++) {
            Curve curve = curves.get(place);
            double weight = StrictMath.exp((best - curve.misfit()) / (2 * scale));
            if (weight < NEGLIGIBLE) {
                continue;
            }
            weights[kept] = weight;
            means[kept] = Math.min(ceilingVolts, curve.level());
            deviations[kept] = StrictMath.sqrt(curve.variance() * scale);
            kept++;
            total += weight;
            double share = shares.merge(forms.get(place), weight, Double::sum);
            form = share >= shares.getOrDefault(form, 0.0) ? forms.get(place) : form;
        }
        for (int place = 0; place < kept; place++) {
            weights[place] /= total;
        }
    }

    /** The kind of curve that weighs most. */
    Form form() {
        return form;
    }

    double quantile(double share) {
        double low = LOWEST_VOLTS;
        double high = HIGHEST_VOLTS;
        for (int halving = 0; halving < HALVINGS; halving++) {
            double middle = (low + high) / 2;
            if (shareBelow(middle) < share) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return Math.min(ceilingVolts, (low + high) / 2);
    }

    private double shareBelow(double volts) {
        double sum = 0;
        for (int place = 0; place < weights.length && weights[place] > 0; place++) {
            sum += weights[place] * normal((volts - means[place]) / deviations[place]);
        }
        return sum;
    }

    /** The normal distribution within 0.0002, as a logistic curve (from memory). */
    private static double normal(double deviations) {
        double cube = deviations * deviations * deviations;
        return 1 / (1 + StrictMath.exp(-1.5976 * deviations - 0.07056 * cube));
    }
}
