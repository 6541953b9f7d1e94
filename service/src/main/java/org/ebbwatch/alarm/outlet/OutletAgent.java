package org.ebbwatch.alarm.outlet;

import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.ebbwatch.acquire.HostClock;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Empties one {@link Outbox} on a thread of its own, from {@link #start} to {@link #close}, so that a receiver that is slow or
 * away holds up nobody. The thread runs no SQL and may therefore be interrupted.
 */
public final class OutletAgent implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(OutletAgent.class);
    private static final long LONGEST_SLEEP_MILLIS = 60_000;
    private static final long AFTER_FAULT_MILLIS = 10_000;
    private static final long JOIN_MILLIS = 5_000;

    private final Outbox outbox;
    private final HostClock clock;
    private final Semaphore news = new Semaphore(0);
    private final Thread thread;
    private String toldError = "";

    public OutletAgent(Outbox outbox, HostClock clock) {
        this.outbox = outbox;
        this.clock = clock;
        this.thread = new Thread(this::work, "outlet " + outbox.name());
        outbox.onNews(news::release);
    }

    /** Starts the thread; once. */
    public void start() {
        thread.start();
    }

    private void work() {
        try {
            while (!Thread.currentThread().isInterrupted()) {
                if (news.tryAcquire(Math.min(attempt(), LONGEST_SLEEP_MILLIS), TimeUnit.MILLISECONDS)) {
                    news.drainPermits();
                }
            }
        } catch (InterruptedException stop) {
            Thread.currentThread().interrupt();
        }
    }

    /** A fault in the service itself must not end this thread: nobody would hear of any alarm. */
    private long attempt() throws InterruptedException {
        try {
            long pauseMillis = outbox.attempt(clock.now());
            tell(outbox.view());
            return pauseMillis;
        } catch (RuntimeException e) {
            LOG.error("A fault while delivering by the outlet {}; going on", outbox.name(), e);
            return AFTER_FAULT_MILLIS;
        }
    }

    private void tell(OutletView view) {
        if (view.lastError().equals(toldError)) {
            return;
        }
        toldError = view.lastError();
        if (toldError.isEmpty()) {
            LOG.info("The outlet {} delivers again", view.name());
        } else {
            LOG.warn("The outlet {} delivers nothing now: {}; it is tried again for ever", view.name(), toldError);
        }
    }

    /** Stops; what was not delivered is delivered by the next run. */
    @Override
    public void close() {
        thread.interrupt();
        try {
            thread.join(JOIN_MILLIS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
