package org.ebbwatch.alarm.outlet;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.OptionalLong;
import java.util.function.ObjLongConsumer;
import org.ebbwatch.time.HostTime;

/**
 * What waits for one outlet, in order. Each message is delivered at least once: it leaves the box only after the receiver has
 * taken it, and is tried again for ever, after 1 s at first and twice as long each time up to 5 min. A message that should
 * ring is tried at once. A message that the receiver refuses for what it holds steps aside, so that it cannot keep the next
 * one from leaving, and is tried again when nothing else waits.
 *
 * <p>It has no thread and no clock: {@link #attempt} is called with the present. Thread-safe, except that only one thread at
 * a time may attempt. Memory: the messages that wait.
 */
public final class Outbox {
    private static final long FIRST_PAUSE_MILLIS = 1_000;
    private static final long LONGEST_PAUSE_MILLIS = 300_000;
    private static final int MOST_DOUBLINGS = 20;
    private static final long NOW = Long.MIN_VALUE;

    private final Outlet outlet;
    private final ObjLongConsumer<OutletMessage> receipts;
    private final Deque<OutletMessage> waiting = new ArrayDeque<>();
    private final Deque<OutletMessage> aside = new ArrayDeque<>();
    private Runnable news = () -> {};
    private long dueMillis = NOW;
    private boolean rang;
    private int failures;
    private String lastError = "";
    private OptionalLong lastSuccess = OptionalLong.empty();

    /**
     * An empty box.
     *
     * @param receipts is told of each message that was taken, and when by the wall clock
     */
    public Outbox(Outlet outlet, ObjLongConsumer<OutletMessage> receipts) {
        this.outlet = outlet;
        this.receipts = receipts;
    }

    public String name() {
        return outlet.name();
    }

    /** Called whenever a message is put in; must not block. */
    synchronized void onNews(Runnable what) {
        news = what;
    }

    /** Puts a message behind those that wait. */
    public synchronized void put(OutletMessage message) {
        waiting.add(message);
        if (message.rings()) {
            dueMillis = NOW;
            rang = true;
        }
        news.run();
    }

    /**
     * Tries to deliver the next message, if it is time.
     *
     * @return milliseconds until it is time again; 0: now; {@link Long#MAX_VALUE}: nothing waits
     * @throws InterruptedException if it is asked to stop
     */
    public long attempt(HostTime now) throws InterruptedException {
        long nowMillis = now.monotonicNanos() / 1_000_000;
        Deque<OutletMessage> from;
        OutletMessage next;
        synchronized (this) {
            from = waiting.isEmpty() ? aside : waiting;
            next = from.peek();
            if (next == null || nowMillis < dueMillis) {
                return untilDue(nowMillis);
            }
            rang = false;
        }
        Outlet.Delivery delivery = deliver(next);
        if (delivery instanceof Outlet.Taken) {
            receipts.accept(next, now.wallMillis());
        }
        synchronized (this) {
            take(from, delivery, now, nowMillis);
            return untilDue(nowMillis);
        }
    }

    private Outlet.Delivery deliver(OutletMessage message) throws InterruptedException {
        try {
            return outlet.deliver(message);
        } catch (RuntimeException e) {
            return new Outlet.NotTaken(
                    "a fault in the service itself: " + e.getClass().getSimpleName());
        }
    }

    private void take(Deque<OutletMessage> from, Outlet.Delivery delivery, HostTime now, long nowMillis) {
        if (delivery instanceof Outlet.Taken) {
            from.remove();
            failures = 0;
            lastError = "";
            lastSuccess = OptionalLong.of(now.wallMillis());
            dueMillis = NOW;
        } else if (delivery instanceof Outlet.NotTaken notTaken) {
            lastError = notTaken.why();
            pause(nowMillis);
        } else if (delivery instanceof Outlet.Unwanted unwanted) {
            lastError = unwanted.why();
            aside.add(from.remove());
            if (waiting.isEmpty()) {
                pause(nowMillis);
            }
        }
    }

    private void pause(long nowMillis) {
        long pause = Math.min(LONGEST_PAUSE_MILLIS, FIRST_PAUSE_MILLIS << Math.min(failures, MOST_DOUBLINGS));
        failures++;
        dueMillis = rang ? NOW : nowMillis + pause;
    }

    private long untilDue(long nowMillis) {
        if (waiting.isEmpty() && aside.isEmpty()) {
            return Long.MAX_VALUE;
        }
        return dueMillis <= nowMillis ? 0 : dueMillis - nowMillis;
    }

    /** How the outlet does. */
    public synchronized OutletView view() {
        return new OutletView(
                outlet.name(), waiting.size() + aside.size(), aside.size(), failures, lastError, lastSuccess);
    }
}
