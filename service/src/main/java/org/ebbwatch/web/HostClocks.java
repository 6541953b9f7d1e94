package org.ebbwatch.web;

import io.micronaut.context.annotation.Factory;
import jakarta.inject.Singleton;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.acquire.SystemHostClock;

/** The clocks the answers are labelled by, where nobody brings others. */
@Factory
class HostClocks {

    @Singleton
    HostClock clock() {
        return new SystemHostClock();
    }
}
