package org.ebbwatch.night;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Works through a list on all cores and gives the results in its order; a bar on the error stream shows how far it is. */
final class Crew {
    private Crew() {}

    static <T> List<T> run(List<Callable<T>> work) throws InterruptedException {
        ExecutorService workers =
                Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
        ProgressBar bar = new ProgressBar(work.size());
        try {
            List<Future<T>> parts = new ArrayList<>();
            for (Callable<T> each : work) {
                parts.add(workers.submit(() -> {
                    T done = each.call();
                    bar.step();
                    return done;
                }));
            }
            List<T> all = new ArrayList<>();
            for (Future<T> part : parts) {
                all.add(part.get());
            }
            return all;
        } catch (ExecutionException e) {
            throw new IllegalStateException("a night broke off", e.getCause());
        } finally {
            workers.shutdownNow();
            bar.end();
        }
    }
}
