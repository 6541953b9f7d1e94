package org.ebbwatch.sim.link;

import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.Function;
import java.util.function.LongSupplier;
import org.ebbwatch.sim.rack.SimBoard;

/**
 * Runs one board on one port, on one thread of its own: bytes in, scans when they are due and the host's credit allows, bytes
 * out, and what a person does in between. When nobody fetches bytes for a second, new ones are dropped, as on a wire.
 */
public final class SimRunner implements AutoCloseable {
    private static final int WAIT_MOST_MILLIS = 5;
    private static final long UNFETCHED_MOST_NANOS = 1_000_000_000;

    private final SimBoard board;
    private final SimPort port;
    private final int speed;
    private final LongSupplier nanos;
    private final Thread thread;
    private final ConcurrentLinkedQueue<Runnable> acts = new ConcurrentLinkedQueue<>();
    private final byte[] in = new byte[4096];
    private final byte[] out = new byte[8192];
    private int outBegin;
    private int outEnd;
    private long lastTakenNanos;
    private volatile boolean closing;
    private volatile Exception failure;

    /**
     * @param speed event seconds per host second, 1 to 65535; as a rule what the board was made with
     */
    public SimRunner(SimBoard board, SimPort port, int speed) {
        this(board, port, speed, System::nanoTime);
    }

    SimRunner(SimBoard board, SimPort port, int speed, LongSupplier nanos) {
        this.board = board;
        this.port = port;
        this.speed = speed;
        this.nanos = nanos;
        thread = new Thread(this::run, "sim " + board.spec().serialNumber());
        thread.setDaemon(true);
    }

    /** Starts the thread; once. */
    public SimRunner start() {
        thread.start();
        return this;
    }

    /** What a host opens. */
    public String address() {
        return port.address();
    }

    /**
     * Does something with the board on its thread, between two steps.
     *
     * @return what it gave or threw; cancelled when the runner closes first
     */
    public <T> CompletableFuture<T> call(Function<SimBoard, T> act) {
        CompletableFuture<T> result = new CompletableFuture<>();
        acts.add(() -> {
            if (closing) {
                result.cancel(false);
                return;
            }
            try {
                result.complete(act.apply(board));
            } catch (RuntimeException e) {
                result.completeExceptionally(e);
            }
        });
        if (!thread.isAlive() && closing) {
            finishActs();
        }
        return result;
    }

    /** Why the thread ended by itself, if it did. */
    public Optional<Exception> failure() {
        return Optional.ofNullable(failure);
    }

    /** Waits until the thread has ended. */
    public void join() throws InterruptedException {
        thread.join();
    }

    private void run() {
        Pace pace = new Pace(speed, nanos.getAsLong());
        lastTakenNanos = nanos.getAsLong();
        try {
            while (!closing) {
                work(pace);
            }
        } catch (IOException | RuntimeException e) {
            if (!closing) {
                failure = e;
            }
        } finally {
            closing = true;
            finishActs();
        }
    }

    /** One round: acts, bytes in, a scan if it is due and allowed, bytes out. */
    void work(Pace pace) throws IOException {
        finishActs();
        long interval = board.intervalMillis();
        long until = pace.nanosUntil(interval, nanos.getAsLong());
        boolean steps = until <= 0 && board.mayStep();
        int wait = steps ? 0 : (int) Math.min(WAIT_MOST_MILLIS, Math.max(1, until / 1_000_000));
        int count = port.read(in, wait);
        if (count > 0) {
            board.receive(in, 0, count);
        }
        if (steps) {
            board.step();
            pace.stepped(interval);
        }
        send();
    }

    private void send() throws IOException {
        while (true) {
            if (outBegin == outEnd) {
                outBegin = 0;
                outEnd = board.transmit(out);
                if (outEnd == 0) {
                    lastTakenNanos = nanos.getAsLong();
                    return;
                }
            }
            int taken = port.write(out, outBegin, outEnd - outBegin);
            outBegin += taken;
            if (taken > 0) {
                lastTakenNanos = nanos.getAsLong();
            } else {
                if (nanos.getAsLong() - lastTakenNanos > UNFETCHED_MOST_NANOS) {
                    board.takeOutput();
                }
                return;
            }
        }
    }

    private void finishActs() {
        for (Runnable act = acts.poll(); act != null; act = acts.poll()) {
            act.run();
        }
    }

    /** Ends the thread, cancels what was not done, closes the port. */
    @Override
    public void close() throws IOException {
        closing = true;
        try {
            thread.join(2_000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        finishActs();
        port.close();
    }
}
