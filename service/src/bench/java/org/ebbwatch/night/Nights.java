package org.ebbwatch.night;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.LongStream;

/**
 * Many nights on all cores. Each seed is one night and draws everything in it; which trouble it has goes round by the seed, so
 * that any stretch of seeds holds every trouble equally often, and as many nights without any as board-wide ones: then half of
 * all channels have nothing wrong with them.
 */
final class Nights {
    /** Seeds below are for tuning. */
    static final long FIRST_TABLE_SEED = 10_000_000;

    private static final List<Trouble> ROUND = round();

    private Nights() {}

    private static List<Trouble> round() {
        List<Trouble> round = new ArrayList<>();
        for (Trouble trouble : Trouble.values()) {
            if (trouble != Trouble.NOTHING) {
                round.add(trouble);
            }
            if (trouble.ofBoard) {
                round.add(Trouble.NOTHING);
            }
        }
        return round;
    }

    static Trouble troubleOf(long seed) {
        return ROUND.get((int) Math.floorMod(seed, (long) ROUND.size()));
    }

    static int roundSize() {
        return ROUND.size();
    }

    /** How many of the nights of one round have a trouble. */
    static int timesInRound(Trouble trouble) {
        return (int) ROUND.stream().filter(one -> one == trouble).count();
    }

    /** Seeds in a row, or of those that follow the ones with one trouble only. */
    static LongStream seeds(long firstSeed, int nights, Optional<Trouble> only) {
        return LongStream.iterate(firstSeed, seed -> seed + 1)
                .filter(seed -> only.isEmpty() || troubleOf(seed) == only.get())
                .limit(nights);
    }

    /** Runs nights in this order until the time is up; a bar on the error stream shows how far it is. */
    static Tally run(long[] seeds, double minutes) throws InterruptedException {
        long endNanos = System.nanoTime() + Math.round(minutes * 60e9);
        int nights = seeds.length;
        int threads = Runtime.getRuntime().availableProcessors();
        ExecutorService workers = Executors.newFixedThreadPool(threads);
        ProgressBar bar = new ProgressBar(nights);
        AtomicInteger next = new AtomicInteger();
        try {
            List<Future<Tally>> parts = LongStream.range(0, threads)
                    .mapToObj(thread -> workers.submit(() -> {
                        Tally part = new Tally();
                        int night = next.getAndIncrement();
                        while (night < nights && System.nanoTime() < endNanos) {
                            run(seeds[night], part);
                            bar.step();
                            night = next.getAndIncrement();
                        }
                        return part;
                    }))
                    .toList();
            Tally whole = new Tally();
            for (Future<Tally> part : parts) {
                whole.add(part.get());
            }
            return whole;
        } catch (ExecutionException e) {
            throw new IllegalStateException("a night broke off", e.getCause());
        } finally {
            workers.shutdownNow();
            bar.end();
        }
    }

    private static void run(long seed, Tally into) {
        try {
            new NightRun(NightPlan.draw(seed, troubleOf(seed)), into, line -> {}).run();
        } catch (RuntimeException e) {
            throw new IllegalStateException("the night of seed " + seed, e);
        }
    }
}
