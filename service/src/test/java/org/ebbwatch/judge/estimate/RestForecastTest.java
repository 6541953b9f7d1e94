package org.ebbwatch.judge.estimate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.ebbwatch.judge.estimate.RestForecast.Forecast;
import org.junit.jupiter.api.Test;

class RestForecastTest {
    private static final long HOUR = 3_600_000;

    /** One exponential is forecast exactly. */
    @Test
    void a_single_exponential_is_forecast_exactly() {
        DoubleUnaryOperator recovery = hours -> 0.03 + 0.87 * (1 - Math.exp(-hours / 4));
        Forecast forecast = forecastAfter(1, recovery, 0.5).orElseThrow();

        assertThat(forecast.volts()).isCloseTo(recovery.applyAsDouble(24), within(1e-5));
        double hoursToLimit = -4 * Math.log(1 - 0.47 / 0.87);
        assertThat(forecast.limitAfterMillis() / 3.6e6).isCloseTo(hoursToLimit, within(1e-3));
    }

    /** 0.045 V after ten minutes, 0.38 V after three hours, 0.86 V after a day: a slow cell, sent back within four hours. */
    @Test
    void a_slow_cell_is_found_out_long_before_it_is_over_the_limit_of_half_a_volt() {
        DoubleUnaryOperator recovery =
                hours -> 0.02 + 0.50 * (1 - Math.exp(-hours / 3.2)) + 0.36 * (1 - Math.exp(-hours / 8));

        assertThat(recovery.applyAsDouble(2)).isLessThan(0.35);
        assertThat(forecastAfter(2, recovery, 0.5))
                .hasValueSatisfying(to -> assertThat(to.volts()).isBetween(0.5, recovery.applyAsDouble(24)));
    }

    @Property(tries = 500)
    void no_sum_of_decaying_exponentials_comes_back_to_less_than_was_forecast(
            @ForAll @Size(min = 1, max = 4) List<@DoubleRange(min = 0.01, max = 0.5) Double> parts,
            @ForAll @Size(4) List<@DoubleRange(min = 0.02, max = 30) Double> timeConstantHours) {
        DoubleUnaryOperator recovery = hours -> {
            double volts = 0.02;
            for (int part = 0; part < parts.size(); part++) {
                volts += parts.get(part) * (1 - Math.exp(-hours / timeConstantHours.get(part)));
            }
            return volts;
        };
        double limit = recovery.applyAsDouble(1);
        for (int hours : new int[] {1, 2, 4, 8, 16}) {
            forecastAfter(hours, recovery, limit)
                    .ifPresent(to -> assertThat(to.volts()).isLessThanOrEqualTo(recovery.applyAsDouble(24) + 1e-4));
        }
    }

    @Test
    void a_recovery_that_gathers_speed_is_not_forecast() {
        assertThat(forecastAfter(1, hours -> 0.03 + 0.1 * hours * hours, 0.5)).isEmpty();
    }

    @Test
    void noise_is_not_forecast() {
        assertThat(forecastAfter(1, hours -> 0.3 + 0.0004 * (1 - Math.exp(-hours)), 0.3001, 0.0001))
                .isEmpty();
    }

    /** What noise may have added to the ratio of two rises is taken off: 2 of 100 forecasts at most are too high. */
    @Test
    void noise_makes_it_promise_less_and_hardly_ever_too_much() {
        var random = new Random(1);
        int made = 0;
        int tooHigh = 0;
        for (int night = 0; night < 300; night++) {
            double slow = 1.5 + 20 * random.nextDouble();
            DoubleUnaryOperator recovery = hours -> 0.03 + 0.9 * (1 - Math.exp(-hours / slow));
            Optional<Forecast> forecast = forecastAfter(
                    1, hours -> recovery.applyAsDouble(hours) + 0.0003 * random.nextGaussian(), 0.1, 0.0003);
            made += forecast.isPresent() ? 1 : 0;
            tooHigh += forecast.map(Forecast::volts).orElse(0.0) > recovery.applyAsDouble(24) ? 1 : 0;
        }
        assertThat(made).isGreaterThan(150);
        assertThat(tooHigh).isLessThanOrEqualTo(6);
    }

    @Test
    void a_reading_missed_when_it_was_due_leaves_no_forecast() {
        var forecast = new RestForecast();
        forecast.begin(0);
        assertThat(forecast.add(1_200_000, 0.1)).isFalse();
        assertThat(forecast.add(2_700_000, 0.2)).isFalse();
        assertThat(forecast.add(3_600_000, 0.25)).isTrue();
        assertThat(forecast.forecast(0.3, 24 * HOUR, 0.0001)).isEmpty();
    }

    @Test
    void a_forecast_is_due_after_one_two_four_eight_and_sixteen_hours() {
        var forecast = new RestForecast();
        forecast.begin(0);
        StringBuilder due = new StringBuilder();
        for (long millis = 0; millis <= 30 * HOUR; millis += 60_000) {
            if (forecast.add(millis, 0.1)) {
                due.append(millis / HOUR).append(' ');
            }
        }
        assertThat(due.toString()).isEqualTo("1 2 4 8 16 ");
    }

    private static Optional<Forecast> forecastAfter(int hours, DoubleUnaryOperator recovery, double limit) {
        return forecastAfter(hours, recovery, limit, 0);
    }

    private static Optional<Forecast> forecastAfter(
            int hours, DoubleUnaryOperator recovery, double limit, double deviation) {
        var forecast = new RestForecast();
        forecast.begin(0);
        for (long millis = 1_000; millis <= hours * HOUR; millis += 1_000) {
            forecast.add(millis, recovery.applyAsDouble(millis / 3.6e6));
        }
        return forecast.forecast(limit, 24 * HOUR, deviation);
    }
}
