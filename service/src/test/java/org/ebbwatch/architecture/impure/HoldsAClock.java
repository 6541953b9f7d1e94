package org.ebbwatch.architecture.impure;

import java.time.Clock;

final class HoldsAClock {
    private final Clock clock;

    HoldsAClock(Clock clock) {
        this.clock = clock;
    }

    Clock clock() {
        return clock;
    }
}
