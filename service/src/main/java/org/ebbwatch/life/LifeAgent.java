package org.ebbwatch.life;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.passage.BoardPulse;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Looks at the progress of acquisition every half second, on a thread of its own from {@link #start} to {@link #close}, and gives
 * signs of life by it. Where looking hangs, because the rack hangs, no sign is given.
 */
public final class LifeAgent implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(LifeAgent.class);
    private static final long LOOK_MILLIS = 500;
    private static final long JOIN_MILLIS = 2_000;

    private final Supplier<List<BoardPulse>> pulses;
    private final HostClock clock;
    private final Optional<SignOfLife> sign;
    private final Optional<SystemdNotices> manager;
    private final Progress progress = new Progress();
    private final CountDownLatch closing = new CountDownLatch(1);
    private final Thread thread = new Thread(this::work, "signs of life");

    /**
     * An agent that has not begun.
     *
     * @param pulses how the readings of every board come in, now
     * @param receiver where signs of life go; empty: nowhere
     * @param environment by which the service manager says where it is to be told
     */
    public LifeAgent(
            Supplier<List<BoardPulse>> pulses,
            HostClock clock,
            Optional<LifeReceiver> receiver,
            Map<String, String> environment) {
        this.pulses = pulses;
        this.clock = clock;
        this.sign = receiver.map(SignOfLife::new);
        this.manager = SystemdNotices.of(environment, ProcessHandle.current().pid());
    }

    /** Says that the service is ready, and begins. */
    public void start() {
        manager.ifPresent(SystemdNotices::ready);
        thread.setDaemon(true);
        thread.start();
    }

    private void work() {
        try {
            do {
                look();
            } while (!closing.await(LOOK_MILLIS, TimeUnit.MILLISECONDS));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void look() {
        try {
            List<BoardPulse> now = pulses.get();
            long monotonicMillis = clock.now().monotonicNanos() / 1_000_000;
            progress.look(now, monotonicMillis);
            sign.ifPresent(it -> it.step(progress, monotonicMillis));
            manager.ifPresent(it -> it.step(progress, monotonicMillis));
        } catch (RuntimeException e) {
            LOG.error("A fault while giving signs of life; going on", e);
        }
    }

    /** Says that the service stops. */
    @Override
    public void close() {
        closing.countDown();
        try {
            thread.join(JOIN_MILLIS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        manager.ifPresent(SystemdNotices::close);
    }
}
