package org.ebbwatch.profile.modbus;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class HostGuardTest {
    private static final long SECOND = 1_000_000_000;

    private final HostGuard guard = new HostGuard(0);

    @Test
    void ten_seconds_without_a_sign_of_life_are_a_lost_host_told_once() {
        guard.heard(5 * SECOND);
        assertThat(guard.findsLost(15 * SECOND - 1)).isFalse();
        assertThat(guard.findsLost(15 * SECOND)).isTrue();
        assertThat(guard.findsLost(16 * SECOND)).isFalse();
        assertThat(guard.isLost()).isTrue();
    }

    @Test
    void a_sign_of_life_lets_loads_close_again() {
        assertThat(guard.findsLost(20 * SECOND)).isTrue();
        guard.heard(21 * SECOND);
        assertThat(guard.isLost()).isFalse();
        assertThat(guard.findsLost(31 * SECOND)).isTrue();
    }
}
