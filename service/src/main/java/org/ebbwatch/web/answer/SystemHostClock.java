package org.ebbwatch.web.answer;

import jakarta.inject.Singleton;

/** The clocks of the machine this runs on. */
@Singleton
final class SystemHostClock implements HostClock {
    @Override
    public long wallMillis() {
        return System.currentTimeMillis();
    }

    @Override
    public long monotonicNanos() {
        return System.nanoTime();
    }
}
