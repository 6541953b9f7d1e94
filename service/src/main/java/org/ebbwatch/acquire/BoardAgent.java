package org.ebbwatch.acquire;

import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.ebbwatch.acquire.RetryPause.Attempt;
import org.ebbwatch.time.EventClock;
import org.ebbwatch.time.HostTime;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps one board connected, over unplug and replug, from {@link #start} to {@link #close}.
 *
 * <p>Two threads, each the other's watchdog. The reader opens the port, reads, and runs the session under the rack's lock; it
 * closes a port that takes no bytes for 2 s. The writer empties the {@link Outbox}; while the reader is caught in opening a port,
 * the writer lets the session's time pass, so that a silence is found even then. Neither is ever interrupted, because the
 * listener's storage may not be; closing the port frees both.
 *
 * <p>A port object is used for one connection, so that no frame meant for one connection can reach the next. When the next
 * attempt comes is decided by {@link RetryPause}.
 */
public final class BoardAgent implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(BoardAgent.class);
    private static final int READ_BYTES = 8_192;
    private static final long LOOK_MILLIS = 100;
    private static final long JOIN_MILLIS = 5_000;

    private static final String LOST = "The port was lost: the board was unplugged or lost its power.";
    private static final String STALLED =
            "The board has taken no bytes for 2 s; the port was closed and is opened again.";
    private static final String FAULT = "The service closed the port because of a fault in itself; its log tells more.";

    /** One connection's port and what waits for it. */
    private record Line(Port port, Outbox outbox) {}

    private final String board;
    private final Supplier<Port> ports;
    private final RackLock rack;
    private final HostClock clock;
    private final BoardSession session;
    private final Thread reader;
    private final Thread writer;
    private final CountDownLatch closing = new CountDownLatch(1);
    private volatile Line line;
    private volatile boolean opening;
    private boolean provenAtEnd;
    private String lastFault = "";

    /**
     * An agent not yet started.
     *
     * @param board the name the board goes by in every event
     * @param expectedSerialNumber refuse any other; empty: take the first that answers
     * @param serialNumbers of all boards of the rack
     * @param ports gives a new, closed port for each attempt
     * @param eventClock where the board's event time goes on
     */
    public BoardAgent(
            String board,
            Optional<String> expectedSerialNumber,
            SerialNumbers serialNumbers,
            Supplier<Port> ports,
            EventClock eventClock,
            BoardListener listener,
            RackLock rack,
            HostClock clock) {
        this.board = board;
        this.ports = ports;
        this.rack = rack;
        this.clock = clock;
        this.session = new BoardSession(board, expectedSerialNumber, serialNumbers, eventClock, listener, this::send);
        this.reader = new Thread(this::connectAndRead, "board " + board + " in");
        this.writer = new Thread(this::write, "board " + board + " out");
    }

    /** Starts both threads; once. */
    public void start() {
        reader.start();
        writer.start();
    }

    /** The session, to be used under the rack's lock only. */
    public BoardSession session() {
        return session;
    }

    /** Closes the port and waits for both threads; must not be called under the rack's lock. */
    @Override
    public void close() {
        closing.countDown();
        Line last = line;
        if (last != null) {
            last.port.close();
        }
        try {
            reader.join(JOIN_MILLIS);
            writer.join(JOIN_MILLIS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void send(byte[] frame) {
        Line current = line;
        if (current != null) {
            current.outbox.put(frame);
        }
    }

    private void connectAndRead() {
        var retry = new RetryPause();
        while (!closed()) {
            Attempt ended = Attempt.UNPROVEN;
            try {
                ended = connectOnce();
            } catch (RuntimeException e) {
                log(e);
            }
            pause(retry.after(ended));
        }
    }

    /** One attempt and the connection it makes. */
    private Attempt connectOnce() {
        Line attempt = new Line(ports.get(), new Outbox());
        if (!open(attempt.port)) {
            return Attempt.NOT_OPENED;
        }
        line = attempt;
        String why = FAULT;
        try {
            rack.run(() -> session.opened(clock.now()));
            why = read(attempt);
        } finally {
            line = null;
            attempt.port.close();
            lost(why);
        }
        return provenAtEnd ? Attempt.PROVEN : Attempt.UNPROVEN;
    }

    private boolean open(Port port) {
        opening = true;
        try {
            port.open();
            return true;
        } catch (PortUnavailable e) {
            rack.run(() -> session.unreachable(e.getMessage(), clock.now()));
            return false;
        } finally {
            opening = false;
        }
    }

    /** Reads until the connection ends, and tells why it did. */
    private String read(Line connection) {
        byte[] bytes = new byte[READ_BYTES];
        while (!closed()) {
            int count;
            try {
                count = connection.port.read(bytes);
            } catch (IOException e) {
                return LOST + " (" + e.getMessage() + ")";
            }
            if (count < 0) {
                return LOST;
            }
            rack.run(() -> take(bytes, count, connection.port.remark()));
            if (connection.outbox.stalled(System.nanoTime())) {
                return STALLED;
            }
        }
        return "The service closed the port.";
    }

    private void take(byte[] bytes, int count, String remark) {
        HostTime now = clock.now();
        session.remark(remark);
        if (count > 0) {
            session.accept(bytes, 0, count, now);
        }
        session.tick(now);
    }

    private void lost(String why) {
        rack.run(() -> {
            provenAtEnd = session.identity().isPresent();
            session.lost(why, clock.now());
        });
    }

    private void write() {
        while (!closed()) {
            Line current = line;
            try {
                if (current == null) {
                    closing.await(LOOK_MILLIS, TimeUnit.MILLISECONDS);
                } else {
                    current.outbox.write(current.port);
                }
            } catch (IOException e) {
                current.port.close();
            } catch (InterruptedException e) {
                return;
            }
            if (opening || !reader.isAlive()) {
                letTimePass();
            }
        }
    }

    private void pause(long millis) {
        for (long waited = 0; waited < millis && !closed(); waited += LOOK_MILLIS) {
            try {
                closing.await(LOOK_MILLIS, TimeUnit.MILLISECONDS);
            } catch (InterruptedException e) {
                closing.countDown();
            }
            letTimePass();
        }
    }

    private void letTimePass() {
        try {
            rack.run(() -> session.tick(clock.now()));
        } catch (RuntimeException e) {
            log(e);
        }
    }

    private synchronized void log(RuntimeException fault) {
        if (!fault.toString().equals(lastFault)) {
            lastFault = fault.toString();
            LOG.error("A fault while watching board {}; the same fault again is not logged", board, fault);
        }
    }

    private boolean closed() {
        return closing.getCount() == 0;
    }
}
