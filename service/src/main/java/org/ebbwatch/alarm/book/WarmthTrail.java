package org.ebbwatch.alarm.book;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import org.ebbwatch.judge.MildWarming;

/**
 * Temperatures of one cell over the last minute and a quarter, by which a slight warming that has become a fast one is told. The
 * mean of the newest third against that of the oldest, so that no single reading decides. Memory: 15 readings.
 */
public final class WarmthTrail {
    private static final long SPACING_MILLIS = 5_000;
    private static final long SPAN_MILLIS = 75_000;
    private static final long SHORTEST_SPAN_MILLIS = 30_000;

    private final Deque<Warmth> trail = new ArrayDeque<>();

    private record Warmth(long eventMillis, double celsius) {}

    /** A reading; NaN is none. One that comes too soon after the last is left out. */
    public void add(long eventMillis, double celsius) {
        boolean soon = !trail.isEmpty() && eventMillis - trail.getLast().eventMillis() < SPACING_MILLIS;
        if (Double.isNaN(celsius) || soon) {
            return;
        }
        trail.add(new Warmth(eventMillis, celsius));
        while (trail.size() > 2 && eventMillis - trail.getFirst().eventMillis() > SPAN_MILLIS) {
            trail.removeFirst();
        }
    }

    /** Whether the cell warms by 1 K/min or more. */
    public boolean isFast() {
        int third = Math.max(1, trail.size() / 3);
        if (trail.size() < 2) {
            return false;
        }
        Warmth then = mean(trail.iterator(), third);
        Warmth now = mean(trail.descendingIterator(), third);
        long millis = now.eventMillis() - then.eventMillis();
        return millis >= SHORTEST_SPAN_MILLIS
                && (now.celsius() - then.celsius()) * 60_000 >= MildWarming.FAST_KELVIN_PER_MINUTE * millis;
    }

    private static Warmth mean(Iterator<Warmth> from, int count) {
        long millis = 0;
        double celsius = 0;
        for (int n = 0; n < count; n++) {
            Warmth warmth = from.next();
            millis += warmth.eventMillis();
            celsius += warmth.celsius();
        }
        return new Warmth(millis / count, celsius / count);
    }
}
