package org.ebbwatch.night;

import java.util.Locale;

/** A bar on the error stream: how much is done, and about how long the rest will take. Safe for several threads. */
final class ProgressBar {
    private static final int WIDTH = 40;
    private static final long EVERY_NANOS = 1_000_000_000L;

    private final int whole;
    private final long beganNanos = System.nanoTime();
    private int done;
    private long shownNanos = beganNanos;

    ProgressBar(int whole) {
        this.whole = whole;
    }

    synchronized void step() {
        done++;
        long now = System.nanoTime();
        if (now - shownNanos >= EVERY_NANOS) {
            shownNanos = now;
            show(now);
        }
    }

    private void show(long now) {
        int full = (int) ((long) WIDTH * done / whole);
        double seconds = (now - beganNanos) / 1e9;
        System.err.printf(
                Locale.ROOT,
                "\r[%s%s] %d of %d, %.0f s, %.0f s to go ",
                "#".repeat(full),
                ".".repeat(WIDTH - full),
                done,
                whole,
                seconds,
                seconds / done * (whole - done));
    }

    synchronized void end() {
        show(System.nanoTime());
        System.err.println();
    }
}
