package org.ebbwatch.passage;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/**
 * What happened on a rack lately, each with a number that rises by one from one to the next and, because the run of the service is
 * part of it, never falls across restarts. Keeps the last 4096 and forgets what is older. Thread-safe; nobody ever waits here for
 * whoever reads.
 */
public final class Happenings {
    /** How many are kept. */
    public static final int KEPT = 4_096;

    private static final long RUN = 1_000_000_000L;
    private static final long LAST_RUN = Long.MAX_VALUE / RUN - 1;

    private final Deque<Numbered> kept = new ArrayDeque<>();
    private final List<Runnable> listeners = new CopyOnWriteArrayList<>();
    private long latest;

    /** A happening with its number. */
    public record Numbered(long number, Happening happening) {}

    /**
     * Nothing has happened yet in this run.
     *
     * @param run counts the starts of the service over its records, from 0
     */
    public Happenings(long run) {
        if (run < 0 || run > LAST_RUN) {
            throw new IllegalArgumentException("runs are counted from 0 to " + LAST_RUN + ", not " + run);
        }
        latest = run * RUN;
    }

    /** This has happened, in this order. */
    public void add(List<Happening> news) {
        if (news.isEmpty()) {
            return;
        }
        synchronized (this) {
            for (Happening happening : news) {
                kept.add(new Numbered(++latest, happening));
                if (kept.size() > KEPT) {
                    kept.removeFirst();
                }
            }
        }
        listeners.forEach(Runnable::run);
    }

    /** Calls this, without waiting for anything, whenever something has happened. */
    public void onNews(Runnable listener) {
        listeners.add(listener);
    }

    /** Number of the latest; that of the one before the first where nothing has happened yet in this run. */
    public synchronized long latest() {
        return latest;
    }

    /** Whether all that came after that number is still kept, so that nothing would be missed. */
    public synchronized boolean hasAllSince(long number) {
        return number <= latest && number >= latest - kept.size();
    }

    /** At most so many of those that came after that number, oldest first. */
    public synchronized List<Numbered> since(long number, int most) {
        List<Numbered> found = new ArrayList<>();
        for (Numbered each : kept) {
            if (each.number() > number && found.size() < most) {
                found.add(each);
            }
        }
        return found;
    }
}
