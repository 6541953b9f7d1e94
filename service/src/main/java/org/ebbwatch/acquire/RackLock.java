package org.ebbwatch.acquire;

import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;

/**
 * The one lock of a rack: sessions, listener and everything behind it run under it, one at a time, so that none of them needs
 * to know of threads. Each board's own reader thread takes it, feeds the session the bytes it has read, and gives it back; a
 * queue to one more thread would only add a hand-over to every scan. Nobody waits for a port, a disk or a person while holding
 * it, except for the storage of the facts themselves.
 */
public final class RackLock {

    private final ReentrantLock lock = new ReentrantLock();

    /** Runs {@code work} alone. */
    public void run(Runnable work) {
        lock.lock();
        try {
            work.run();
        } finally {
            lock.unlock();
        }
    }

    /** Runs {@code work} alone and gives what it gives. */
    public <T> T call(Supplier<T> work) {
        lock.lock();
        try {
            return work.get();
        } finally {
            lock.unlock();
        }
    }
}
