package org.ebbwatch.web.live;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.http.sse.Event;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import org.ebbwatch.passage.Happenings;
import org.ebbwatch.passage.Happenings.Numbered;
import org.ebbwatch.web.answer.HappeningAnswer;
import org.reactivestreams.Publisher;
import org.reactivestreams.Subscriber;
import org.reactivestreams.Subscription;

/**
 * One who listens. It holds no events: only the number of the last one it got, so that a slow listener costs nothing but its place.
 * {@link #serve} is called by one thread alone; whatever the server calls does no work but to leave a note and wake that thread.
 */
final class Listener implements Publisher<Event<?>>, Subscription {
    static final long HEARTBEAT_NANOS = 15_000_000_000L;
    static final long STALLED_NANOS = 60_000_000_000L;

    private static final int PORTION = 64;
    private static final long UNKNOWN = -1;

    private final Happenings happenings;
    private final Consumer<Listener> begun;
    private final Runnable wake;
    private final AtomicLong wanted = new AtomicLong();
    private volatile Subscriber<? super Event<?>> subscriber;
    private volatile boolean gone;
    private long number;
    private boolean greeted;
    private boolean served;
    private long lastNanos;

    /**
     * A listener.
     *
     * @param begun told once, when the server is ready to take events
     * @param wake called whenever there is something for {@link #serve} to do
     * @param lastNumber of the last event it got from an earlier connection, as text; null: it had none
     */
    Listener(Happenings happenings, Consumer<Listener> begun, Runnable wake, @Nullable String lastNumber) {
        this.happenings = happenings;
        this.begun = begun;
        this.wake = wake;
        this.number = lastNumber == null ? happenings.latest() : parsed(lastNumber);
    }

    private static long parsed(String number) {
        try {
            return Long.parseLong(number.strip());
        } catch (NumberFormatException e) {
            return UNKNOWN;
        }
    }

    @Override
    public void subscribe(Subscriber<? super Event<?>> who) {
        subscriber = who;
        who.onSubscribe(this);
        begun.accept(this);
    }

    @Override
    public void request(long more) {
        wanted.accumulateAndGet(more, (now, added) -> now + added < 0 ? Long.MAX_VALUE : now + added);
        wake.run();
    }

    @Override
    public void cancel() {
        gone = true;
    }

    /** Tells what is new, as far as it is wanted; says whether the listener is still there. */
    boolean serve(long nanos) {
        if (gone) {
            return false;
        }
        if (!served) {
            served = true;
            lastNanos = nanos;
        }
        try {
            boolean told = greet();
            told |= tellNews();
            if (!told && nanos - lastNanos >= HEARTBEAT_NANOS) {
                told = tell(Event.of("").comment("here"));
            }
            if (told) {
                lastNanos = nanos;
            }
        } catch (RuntimeException e) {
            gone = true;
            subscriber.onError(e);
        }
        if (nanos - lastNanos >= STALLED_NANOS) {
            end();
        }
        return !gone;
    }

    /** The first item comes at once: a browser's stream is open only then. */
    private boolean greet() {
        if (greeted || wanted.get() == 0) {
            return false;
        }
        greeted = true;
        return happenings.hasAllSince(number) ? tell(event("hello", number, new Place(number))) : reset();
    }

    private boolean tellNews() {
        boolean told = false;
        while (greeted && wanted.get() > 0 && number < happenings.latest()) {
            if (!happenings.hasAllSince(number)) {
                told |= reset();
                continue;
            }
            for (Numbered each : happenings.since(number, PORTION)) {
                if (!tell(event("happening", each.number(), HappeningAnswer.of(each)))) {
                    return told;
                }
                number = each.number();
                told = true;
            }
        }
        return told;
    }

    /** Something was missed that nobody remembers: look at everything anew. */
    private boolean reset() {
        number = happenings.latest();
        return tell(event("reset", number, new Place(number)));
    }

    private static Event<Object> event(String name, long number, Object what) {
        return Event.<Object>of(what).id(Long.toString(number)).name(name);
    }

    private boolean tell(Event<?> event) {
        if (gone || wanted.get() == 0) {
            return false;
        }
        wanted.accumulateAndGet(1, (now, one) -> now == Long.MAX_VALUE ? now : now - one);
        subscriber.onNext(event);
        return true;
    }

    /** Lets it go; it comes back with the number of its last event if it wants. */
    void end() {
        if (!gone) {
            gone = true;
            subscriber.onComplete();
        }
    }
}
