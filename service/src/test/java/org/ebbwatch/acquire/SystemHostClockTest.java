package org.ebbwatch.acquire;

import static org.assertj.core.api.Assertions.assertThat;

import org.ebbwatch.time.HostTime;
import org.junit.jupiter.api.Test;

class SystemHostClockTest {

    @Test
    void two_clocks_of_one_boot_can_be_compared() {
        HostTime earlier = new SystemHostClock().now();
        HostTime later = new SystemHostClock().now();
        assertThat(later.monotonicMillisSince(earlier).orElseThrow()).isBetween(0L, 60_000L);
        assertThat(later.hostBoot()).isEqualTo(earlier.hostBoot());
    }

    @Test
    void one_clock_never_goes_back() {
        SystemHostClock clock = new SystemHostClock();
        long last = clock.now().monotonicNanos();
        for (int i = 0; i < 10_000; i++) {
            long next = clock.now().monotonicNanos();
            assertThat(next).isGreaterThanOrEqualTo(last);
            last = next;
        }
    }
}
