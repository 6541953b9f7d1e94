package org.ebbwatch.judge.estimate;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.ebbwatch.judge.estimate.RestFit.Form;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RestFitTest {
    private static final int DAY = SimulatedNight.DAY_SECONDS;

    /** A thousand simulated nights of both relaxation families; how they are drawn: {@link SimulatedNight}. */
    @Nested
    @TestInstance(TestInstance.Lifecycle.PER_CLASS)
    class Over_simulated_nights {
        private static final int NIGHTS = 1_200;
        private final List<SimulatedNight> nights = new ArrayList<>();

        @BeforeAll
        void simulate() {
            for (int night = 0; night < NIGHTS; night++) {
                nights.add(new SimulatedNight(5_000 + night));
            }
        }

        @ParameterizedTest
        @CsvSource({"600, 1.0", "3600, 0.5", "14400, 0.15"})
        void the_interval_holds_93_to_97_of_100_and_half_are_narrower_than_said(int seconds, double medianWidth) {
            List<RestFit> all = forecasts(nights, seconds);

            assertThat(held(nights, all)).isBetween(0.93, 0.97);
            double[] widths = all.stream()
                    .mapToDouble(fit -> fit.highestVolts() - fit.lowestVolts())
                    .sorted()
                    .toArray();
            assertThat(widths[NIGHTS / 2]).isLessThan(medianWidth);
        }

        @ParameterizedTest
        @CsvSource({"true", "false"})
        void ten_minutes_give_93_to_97_of_100_for_each_family(boolean diffuses) {
            List<SimulatedNight> family = nights.stream()
                    .filter(night -> night.diffuses() == diffuses)
                    .toList();

            assertThat(held(family, forecasts(family, 600))).isBetween(0.93, 0.97);
        }

        private List<RestFit> forecasts(List<SimulatedNight> of, int seconds) {
            return of.stream().map(night -> night.forecastAfter(seconds)).toList();
        }

        private double held(List<SimulatedNight> of, List<RestFit> forecasts) {
            int held = 0;
            for (int night = 0; night < of.size(); night++) {
                double end = of.get(night).endVolts();
                RestFit fit = forecasts.get(night);
                held += fit.lowestVolts() <= end && end <= fit.highestVolts() ? 1 : 0;
            }
            return held / (double) of.size();
        }
    }

    @Test
    void recoveries_by_one_exponential_are_held_from_a_tenth_of_their_time_on() {
        var random = new Random(4);
        int held = 0;
        for (int run = 0; run < 200; run++) {
            double hours = 0.5 + 11.5 * random.nextDouble();
            double rise = 0.05 + 1.5 * random.nextDouble();
            DoubleUnaryOperator recovery = second -> 0.02 + rise * (1 - Math.exp(-second / hours / 3600));
            RestFit fit = after((int) (hours * 360 + 600), recovery, 0.0003);
            double end = recovery.applyAsDouble(DAY);
            held += fit.lowestVolts() <= end && end <= fit.highestVolts() ? 1 : 0;
        }
        assertThat(held).isGreaterThanOrEqualTo(186);
    }

    @Test
    void a_cell_that_rises_no_more_is_flat_within_what_noise_hides() {
        RestFit fit = after(3_600, second -> 0.05 - second * 1e-7, 0.0005);

        assertThat(fit.form()).isEqualTo(Form.FLAT);
        assertThat(fit.highestVolts() - fit.lowestVolts()).isLessThan(0.01);
        assertThat(fit.volts()).isBetween(0.049, 0.051);
    }

    @Test
    void the_longer_it_rested_the_narrower_the_interval() {
        DoubleUnaryOperator recovery = second -> 0.02 + 0.7 * (1 - Math.exp(-second / 20_000.0));
        double early = width(after(600, recovery, 0.0003));
        double late = width(after(43_200, recovery, 0.0003));

        assertThat(late).isLessThan(early / 4);
    }

    @Test
    void a_stretched_recovery_is_told_from_a_single_exponential() {
        assertThat(after(7_200, second -> 1 - Math.exp(-Math.sqrt(second / 4_000.0)), 0.0002)
                        .form())
                .isEqualTo(Form.STRETCHED);
    }

    @Test
    void fewer_than_eight_stretches_or_an_end_that_has_passed_give_no_forecast() {
        var curve = new RestCurve();
        assertThat(RestFit.of(curve, DAY, 0.001)).isEmpty();
        for (int second = 0; second <= 600; second++) {
            curve.add(second * 1_000L, second < 300 ? Double.NaN : 1);
        }
        assertThat(RestFit.of(curve, DAY, 0.001)).isEmpty();
        assertThat(RestFit.of(curve, 100, 0.001)).isEmpty();
    }

    @Test
    void a_forecast_is_due_after_ten_minutes_and_after_each_doubling() {
        var curve = new RestCurve();
        curve.begin(7);
        var due = new StringBuilder();
        for (int second = 0; second < DAY; second++) {
            if (curve.add(7 + second * 1_000L, 1)) {
                due.append(second / 60).append(' ');
            }
        }
        assertThat(due.toString()).isEqualTo("10 20 40 80 160 320 640 1280 ");
    }

    private static double width(RestFit fit) {
        return fit.highestVolts() - fit.lowestVolts();
    }

    private static RestFit after(int seconds, DoubleUnaryOperator recovery, double deviation) {
        var random = new Random(1);
        var curve = new RestCurve();
        curve.begin(0);
        for (int second = 1; second <= seconds; second++) {
            curve.add(second * 1_000L, recovery.applyAsDouble(second) + deviation * random.nextGaussian());
        }
        return RestFit.of(curve, DAY, deviation).orElseThrow();
    }
}
