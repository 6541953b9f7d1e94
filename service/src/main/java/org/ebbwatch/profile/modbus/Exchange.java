package org.ebbwatch.profile.modbus;

import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import java.util.function.LongSupplier;
import org.ebbwatch.acquire.Port;
import org.ebbwatch.acquire.PortUnavailable;

/**
 * Requests and answers on a port, one at a time, each with a deadline of its own on the host's monotonic clock. After a request
 * that was not answered on a serial line, whatever comes for as long again is thrown away: a late answer has nothing that tells
 * it from the next one. For one thread.
 */
final class Exchange {
    /** Why an answer over TCP ends the connection. */
    static final String NO_MODBUS = "bytes that are no Modbus over TCP";

    private static final int READ_BYTES = 512;
    private static final long NANOS_PER_MILLI = 1_000_000;

    private final Port port;
    private final Wire wire;
    private final long timeoutNanos;
    private final long pauseNanos;
    private final LongSupplier nanos;
    private final byte[] bytes = new byte[READ_BYTES];
    private Optional<Request> waiting = Optional.empty();
    private boolean sent;
    private boolean unquiet;
    private long deadline;
    private long lastByte;

    /**
     * A closed exchange.
     *
     * @param pauseNanos how long the line rests before each request
     * @param nanos the host's monotonic clock
     */
    Exchange(Port port, Wire wire, int timeoutMillis, long pauseNanos, LongSupplier nanos) {
        this.port = port;
        this.wire = wire;
        this.timeoutNanos = timeoutMillis * NANOS_PER_MILLI;
        this.pauseNanos = pauseNanos;
        this.nanos = nanos;
        this.lastByte = nanos.getAsLong();
    }

    void open() throws PortUnavailable {
        port.open();
        unquiet = wire.needsQuiet();
    }

    /** Makes a request and waits for its end, two timeouts at most. */
    Answer ask(Request request) throws IOException {
        begin(request);
        Optional<Answer> answer = step();
        while (answer.isEmpty()) {
            answer = step();
        }
        return answer.get();
    }

    /** Begins a request; one that was under way is given up. */
    void begin(Request request) throws IOException {
        unquiet |= waiting.isPresent() && wire.needsQuiet();
        waiting = Optional.of(request);
        sent = false;
        deadline = nanos.getAsLong() + timeoutNanos;
        if (!unquiet) {
            send(request);
        }
    }

    /** Whether a request is under way. */
    boolean isUnderWay() {
        return waiting.isPresent();
    }

    /**
     * Waits about 100 ms at most for the request under way.
     *
     * @return its answer, once, when it has ended
     * @throws IOException if the connection is lost
     */
    Optional<Answer> step() throws IOException {
        int count = port.read(bytes);
        if (count < 0) {
            throw new IOException("the device was unplugged or lost its power");
        }
        if (count > 0) {
            lastByte = nanos.getAsLong();
        }
        boolean late = nanos.getAsLong() - deadline >= 0;
        if (!sent) {
            if (count == 0 && late) {
                unquiet = false;
                send(waiting.orElseThrow());
            }
            return Optional.empty();
        }
        Optional<Answer> answer = count > 0 ? wire.accept(bytes, count) : Optional.empty();
        if (answer.isPresent()) {
            return end(answer.get());
        }
        return late ? end(new Answer.Silent()) : Optional.empty();
    }

    void close() {
        port.close();
    }

    private void send(Request request) throws IOException {
        long rest = lastByte + pauseNanos - nanos.getAsLong();
        if (rest > 0) {
            LockSupport.parkNanos(rest);
        }
        byte[] frame = wire.begin(request);
        port.write(frame, 0, frame.length);
        sent = true;
        deadline = nanos.getAsLong() + timeoutNanos;
    }

    private Optional<Answer> end(Answer answer) throws IOException {
        waiting = Optional.empty();
        boolean bad = answer instanceof Answer.Garbled || answer instanceof Answer.Silent;
        unquiet = bad && wire.needsQuiet();
        if (answer instanceof Answer.Garbled garbled && garbled.why().equals(NO_MODBUS)) {
            throw new IOException("it sends " + NO_MODBUS);
        }
        return Optional.of(answer);
    }
}
