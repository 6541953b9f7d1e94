package org.ebbwatch.time;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.LongUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ClockRateTest {

    private final ClockRate rate = new ClockRate();
    private long hostMillis;
    private double boardMillis;

    private void run(long forMillis, double boardPerHost, LongUnaryOperator delay) {
        long end = hostMillis + forMillis;
        while (hostMillis < end) {
            hostMillis += 1_000;
            boardMillis += 1_000 * boardPerHost;
            rate.observe(Math.round(boardMillis), hostMillis + delay.applyAsLong(hostMillis));
        }
    }

    private void run(long forMillis, double boardPerHost) {
        run(forMillis, boardPerHost, at -> 0);
    }

    @ParameterizedTest
    @CsvSource({
        "1.0005, false",
        "1.0095, false",
        "0.9905, false",
        "1.011, true",
        "0.989, true",
        "2.0, true",
        "0.0, true"
    })
    void a_clock_is_odd_when_more_than_one_per_cent_off_over_ten_minutes(double boardPerHost, boolean odd) {
        run(700_000, boardPerHost);
        assertThat(rate.odd()).isEqualTo(odd);
        assertThat(rate.ratio()).isCloseTo(boardPerHost, within(2e-4));
    }

    @Test
    void nothing_is_said_before_ten_minutes() {
        run(590_000, 1.5);
        assertThat(rate.odd()).isFalse();
        assertThat(rate.ratio()).isEqualTo(1);
    }

    @Test
    void late_delivery_is_not_taken_for_a_slow_clock() {
        run(1_500_000, 1.0, at -> at % 7_000 == 0 ? 0 : at % 11_000);
        assertThat(rate.odd()).isFalse();
        assertThat(rate.ratio()).isCloseTo(1, within(1e-3));
    }

    @Test
    void an_odd_clock_becomes_ordinary_when_ten_minutes_were_below_the_lower_limit() {
        run(700_000, 1.02);
        run(1_300_000, 1.0095);
        assertThat(rate.odd()).isTrue();
        run(1_300_000, 1.008);
        assertThat(rate.odd()).isFalse();
    }

    @Test
    void a_leap_is_odd_at_once_and_for_ten_minutes_more() {
        rate.leapt(500);
        assertThat(rate.odd()).isTrue();
        assertThat(rate.ratio()).isEqualTo(500);
        run(600_000, 1);
        assertThat(rate.odd()).isTrue();
        run(100_000, 1);
        assertThat(rate.odd()).isFalse();
    }

    @Test
    void the_ten_minutes_begin_anew_after_a_restart() {
        run(500_000, 1.5);
        rate.restart();
        run(500_000, 1.5);
        assertThat(rate.odd()).isFalse();
        run(200_000, 1.5);
        assertThat(rate.odd()).isTrue();
    }

    @Test
    void scans_a_minute_apart_are_enough() {
        for (long millis = 0; millis <= 1_500_000; millis += 60_000) {
            rate.observe(Math.round(millis * 1.02), millis);
        }
        assertThat(rate.odd()).isTrue();
    }
}
