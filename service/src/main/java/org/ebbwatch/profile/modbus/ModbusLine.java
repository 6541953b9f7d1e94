package org.ebbwatch.profile.modbus;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.LongSupplier;
import org.ebbwatch.acquire.PortUnavailable;
import org.ebbwatch.profile.DeviceLine;
import org.ebbwatch.profile.LoadOrder;
import org.ebbwatch.profile.ProfiledBoard;
import org.ebbwatch.rig.message.RefusalReason;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Scans Modbus units and switches their loads, on the thread that reads. A scan goes on as soon as any unit has answered anything;
 * what could not be read is missing from it. {@link #close}, on whatever thread, first tries to open every load, and so does a
 * thread of its own when the host has not said for ten seconds that it lives, even if nobody reads any more. After ten rounds in
 * which nothing answered the connection is given up, so that it is made anew.
 */
final class ModbusLine implements DeviceLine {
    private static final Logger LOG = LoggerFactory.getLogger(ModbusLine.class);
    private static final long NANOS_PER_MILLI = 1_000_000;
    private static final long LONGEST_WAIT_MILLIS = 100;
    private static final long CLOSE_SECONDS = 2;
    private static final long LOOK_SECONDS = 1;
    private static final int MOST_UNHEARD_ROUNDS = 10;

    private final ModbusProfile profile;
    private final Exchange exchange;
    private final LoadStates states;
    private final LoadSwitches switches;
    private final LongSupplier nanos;
    private final List<Span> plan;
    private final UnitHealth health = new UnitHealth();
    private final HostGuard guard;
    private final ReentrantLock busy = new ReentrantLock();
    private Optional<PollRound> round = Optional.empty();
    private long dueNanos;
    private int unheardRounds;
    private volatile boolean opened;
    private final CountDownLatch closing = new CountDownLatch(1);

    /**
     * A closed connection.
     *
     * @param states outlive the connection
     * @param nanos the host's monotonic clock
     */
    ModbusLine(ModbusProfile profile, Exchange exchange, LoadStates states, LongSupplier nanos) {
        this.profile = profile;
        this.exchange = exchange;
        this.states = states;
        this.switches = new LoadSwitches(exchange, states, profile.retries());
        this.nanos = nanos;
        this.plan = profile.plan();
        this.guard = new HostGuard(nanos.getAsLong());
        this.dueNanos = nanos.getAsLong();
    }

    @Override
    public void open() throws PortUnavailable {
        exchange.open();
        opened = true;
        if (switches.any()) {
            Thread watcher = new Thread(this::watchHost, "load guard");
            watcher.setDaemon(true);
            watcher.start();
        }
    }

    @Override
    public boolean step(ProfiledBoard board) throws IOException {
        busy.lock();
        try {
            return !isClosing() && work(board);
        } finally {
            busy.unlock();
        }
    }

    @Override
    public void close() {
        closing.countDown();
        boolean alone = false;
        try {
            alone = busy.tryLock(CLOSE_SECONDS, TimeUnit.SECONDS);
            if (alone && opened) {
                opened = false;
                switches.openAll();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (IOException lost) {
            opened = false; // nothing can be asked of it any more
        } finally {
            exchange.close();
            if (alone) {
                busy.unlock();
            }
        }
    }

    private boolean work(ProfiledBoard board) throws IOException {
        if (board.takeHostAlive()) {
            guard.heard(nanos.getAsLong());
        }
        Optional<LoadOrder> order = nextOrder(board);
        if (order.isPresent()) {
            carryOut(order.get(), board);
        } else if (nanos.getAsLong() - dueNanos >= 0) {
            poll(board);
        }
        return unheardRounds < MOST_UNHEARD_ROUNDS;
    }

    private void watchHost() {
        try {
            while (!closing.await(LOOK_SECONDS, TimeUnit.SECONDS)) {
                busy.lock();
                try {
                    if (guard.findsLost(nanos.getAsLong())) {
                        round = Optional.empty();
                        switches.openAll();
                    }
                } finally {
                    busy.unlock();
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (IOException e) {
            LOG.warn("The loads of a lost connection cannot be opened: {}", e.getMessage());
        }
    }

    private boolean isClosing() {
        return closing.getCount() == 0;
    }

    private Optional<LoadOrder> nextOrder(ProfiledBoard board) {
        long untilDue = (dueNanos - nanos.getAsLong()) / NANOS_PER_MILLI + 1;
        try {
            return board.awaitOrder(Math.min(LONGEST_WAIT_MILLIS, untilDue));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return Optional.empty();
        }
    }

    private void carryOut(LoadOrder order, ProfiledBoard board) throws IOException {
        round = Optional.empty();
        if (order.applied() && guard.isLost()) {
            board.refuse(order, order.channel(), RefusalReason.HOST_LOST);
            return;
        }
        OptionalInt failed = switches.carryOut(order);
        if (failed.isPresent()) {
            board.refuse(order, failed.getAsInt(), RefusalReason.FAILED);
        } else {
            board.done(order);
        }
    }

    private void poll(ProfiledBoard board) throws IOException {
        PollRound current = round.orElseGet(() -> new PollRound(profile, plan, states, health));
        if (round.isEmpty() || !exchange.isUnderWay()) {
            round = Optional.of(current);
            exchange.begin(current.next());
        }
        Optional<Answer> answer = exchange.step();
        if (answer.isPresent()) {
            if (!(answer.get() instanceof Answer.Data)) {
                board.unusable();
            }
            current.take(answer.get());
            if (current.isOver()) {
                finish(current, board);
            }
        }
    }

    private void finish(PollRound over, ProfiledBoard board) {
        round = Optional.empty();
        dueNanos = Math.max(dueNanos + board.intervalMillis() * NANOS_PER_MILLI, nanos.getAsLong());
        unheardRounds = over.heard() ? 0 : unheardRounds + 1;
        board.remark(health.remark());
        if (over.heard()) {
            board.scanned(0, over.contacts(), over.raws(), states::isApplied);
        }
    }
}
