package org.ebbwatch.sim.link;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class PaceTest {
    private static final long SECOND = 1_000_000_000L;

    @Test
    void a_scan_is_due_one_interval_later_at_speed_1() {
        Pace pace = new Pace(1, 0);

        assertThat(pace.nanosUntil(1_000, 0)).isEqualTo(SECOND);
        assertThat(pace.nanosUntil(1_000, SECOND)).isZero();
        pace.stepped(1_000);
        assertThat(pace.nanosUntil(1_000, SECOND)).isEqualTo(SECOND);
    }

    @Test
    void speed_shortens_the_wait() {
        Pace pace = new Pace(600, 0);

        assertThat(pace.nanosUntil(60_000, 0)).isEqualTo(SECOND / 10);
    }

    @Test
    void a_little_lateness_is_caught_up() {
        Pace pace = new Pace(1, 0);
        pace.nanosUntil(100, SECOND / 5);
        pace.stepped(100);

        assertThat(pace.nanosUntil(100, SECOND / 5)).isZero();
        pace.stepped(100);
        assertThat(pace.nanosUntil(100, SECOND / 5)).isEqualTo(SECOND / 10);
    }

    @Test
    void a_long_wait_is_let_go_instead_of_run_through_in_a_burst() {
        Pace pace = new Pace(1, 0);
        long now = 100 * SECOND;
        int steps = 0;
        while (pace.nanosUntil(100, now) <= 0) {
            pace.stepped(100);
            steps++;
        }
        assertThat(steps).isLessThanOrEqualTo(4);
    }
}
