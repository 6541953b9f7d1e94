package org.ebbwatch.container;

import org.testcontainers.containers.wait.strategy.AbstractWaitStrategy;

/** Enough that a container has started; what becomes of it the test sees for itself. */
final class Started extends AbstractWaitStrategy {
    @Override
    protected void waitUntilReady() {}
}
