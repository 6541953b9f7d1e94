package org.ebbwatch.evening.rule;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class TouchProofTest {
    private final TouchProof touch = new TouchProof();
    private long millis;

    /** A straight rise of so many kelvin over so many seconds. */
    private void rise(double kelvin, int seconds, double ambientRise) {
        for (int i = 0; i <= seconds; i++) {
            millis += 1_000;
            touch.follow(millis, 21 + kelvin * i / seconds, 20 + ambientRise * i / seconds);
        }
    }

    @Test
    void a_sensor_that_is_held_rises_by_a_kelvin_and_more_within_the_minute() {
        rise(3, 30, 0);
        assertThat(touch.riseKelvin()).isPresent();
        assertThat(touch.riseKelvin().getAsDouble()).isBetween(2.5, 3.0);
    }

    @Test
    void a_slow_rise_is_nobodys_finger() {
        rise(3, 600, 0);
        assertThat(touch.riseKelvin()).isEmpty();
    }

    @Test
    void a_room_that_warms_touches_no_sensor() {
        rise(3, 30, 3);
        assertThat(touch.riseKelvin()).isEmpty();
    }

    @Test
    void one_wild_reading_is_no_touch() {
        rise(0, 30, 0);
        touch.follow(millis + 1_000, 23.5, 20);
        rise(0, 30, 0);
        assertThat(touch.riseKelvin()).isEmpty();
    }

    @Test
    void a_sensor_that_reads_nothing_is_not_proven() {
        for (int i = 0; i < 100; i++) {
            touch.follow(i * 1_000L, Double.NaN, 20);
        }
        assertThat(touch.riseKelvin()).isEmpty();
    }
}
