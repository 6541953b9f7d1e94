package org.ebbwatch.web.live;

import io.micronaut.context.annotation.Requires;
import io.micronaut.core.annotation.Nullable;
import jakarta.annotation.PostConstruct;
import jakarta.annotation.PreDestroy;
import jakarta.inject.Singleton;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.locks.LockSupport;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.passage.Happenings;

/**
 * Tells listeners what happens, by one thread for all of them, at most {@value #MOST} at a time. A listener that has not taken
 * anything for a minute is let go. Whoever brings the news never waits for a listener.
 */
@Singleton
@Requires(beans = Happenings.class)
final class LiveEvents {
    static final int MOST = 32;

    private static final long LOOK_NANOS = 1_000_000_000L;

    private final Happenings happenings;
    private final HostClock clock;
    private final Queue<Listener> listeners = new ConcurrentLinkedQueue<>();
    private final Thread teller = new Thread(this::run, "live events");
    private volatile boolean closed;

    LiveEvents(Happenings happenings, HostClock clock) {
        this.happenings = happenings;
        this.clock = clock;
    }

    /** Begins to look after listeners. */
    @PostConstruct
    void start() {
        teller.setDaemon(true);
        teller.start();
        happenings.onNews(this::wake);
    }

    /** A place for one more listener; empty where all are taken. */
    Optional<Listener> place(@Nullable String lastNumber) {
        return listeners.size() >= MOST
                ? Optional.empty()
                : Optional.of(new Listener(happenings, this::add, this::wake, lastNumber));
    }

    private void add(Listener listener) {
        listeners.add(listener);
        wake();
    }

    /** Looks after the listeners now; does nothing itself. */
    private void wake() {
        LockSupport.unpark(teller);
    }

    private void run() {
        while (!closed) {
            listeners.removeIf(listener -> !listener.serve(clock.now().monotonicNanos()));
            LockSupport.parkNanos(this, LOOK_NANOS);
        }
        listeners.forEach(Listener::end);
        listeners.clear();
    }

    /** Ends all streams. */
    @PreDestroy
    void close() {
        closed = true;
        wake();
    }
}
