package org.ebbwatch.demo;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.BooleanSupplier;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.acquire.BoardSession;
import org.ebbwatch.demo.Workshop.Bench;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Finding;
import org.ebbwatch.judge.Outcome.Event;
import org.ebbwatch.judge.Outcome.Raised;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.BoardBasis;
import org.ebbwatch.passage.BoardControl;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.PassageLog;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.RackWatch;
import org.ebbwatch.passage.TraceLog;
import org.ebbwatch.sim.rack.SimBoard;
import org.ebbwatch.time.EventClock;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.WallQuality;

/** One simulated board and the whole service short of threads, ports and disk, in one thread. */
final class InProcessRack implements Hands {
    private static final int USUAL_SPEED = 3600;
    private static final long LOOK_IN_MILLIS = 600_000;

    private final Bench bench;
    private final SimBoard sim;
    private final RackWatch watch;
    private final BoardSession session;
    private final Technician technician = new Technician(this);
    private final List<Raising> raised = new ArrayList<>();
    private final int speed;
    private final OddClocks clocks;
    private long hostNanos;
    private long nextId;

    /** A finding and the channel it was raised on. */
    record Raising(int channel, Finding finding) {}

    /** A rack that keeps nothing. */
    InProcessRack(Bench bench, long seed, long intervalMillis) {
        this(bench, seed, intervalMillis, new Nothing(), new Nothing());
    }

    /** A rack whose readings and journal go where they are told to. */
    InProcessRack(Bench bench, long seed, long intervalMillis, TraceLog trace, PassageLog log) {
        this(bench, seed, intervalMillis, trace, log, USUAL_SPEED, OddClocks.NONE);
    }

    /** The same whose board says that it runs at this speed, with clocks that may be odd. */
    InProcessRack(
            Bench bench, long seed, long intervalMillis, TraceLog trace, PassageLog log, int speed, OddClocks clocks) {
        this.bench = bench;
        this.speed = speed;
        this.clocks = clocks;
        this.sim = new SimBoard(bench.spec(), seed, speed, intervalMillis);
        this.watch = new RackWatch(trace, new Remembered(log), new Direct(), () -> new UUID(0, ++nextId));
        this.session = new BoardSession(
                bench.name(),
                Optional.empty(),
                EventClock.fresh(),
                watch,
                frame -> sim.receive(frame, 0, frame.length));
        session.opened(now());
        exchange();
    }

    SimBoard sim() {
        return sim;
    }

    RackWatch watch() {
        return watch;
    }

    List<Raising> raised() {
        return raised;
    }

    /** Checks in every cell of the bench. */
    void checkInAll(Procedure procedure) {
        step();
        for (int channel = 0; channel < bench.cells().size(); channel++) {
            watch.checkIn(bench.name(), channel, bench.cells().get(channel).card(), procedure, 0);
        }
    }

    void step() {
        sim.step();
        hostNanos += sim.intervalMillis() * 1_000_000 / speed;
        exchange();
    }

    /** Goes on, with the technician looking in every ten minutes, until {@code done} or event time is up. */
    void run(BooleanSupplier done, long mostMillis) {
        long look = 0;
        while (!done.getAsBoolean() && sim.eventMillis() < mostMillis) {
            step();
            if (sim.eventMillis() >= look) {
                look = sim.eventMillis() + LOOK_IN_MILLIS;
                passages().forEach(passage -> technician.attend(passage, sim.eventMillis()));
            }
        }
    }

    List<PassageView> passages() {
        return watch.view().passages();
    }

    PassageView passage(int channel) {
        return passages().stream()
                .filter(passage -> passage.channel() == channel)
                .reduce((first, second) -> second)
                .orElseThrow();
    }

    private void exchange() {
        byte[] bytes = clocks.board().apply(sim.takeOutput());
        while (bytes.length > 0) {
            session.accept(bytes, 0, bytes.length, now());
            bytes = clocks.board().apply(sim.takeOutput());
        }
        session.tick(now());
    }

    private HostTime now() {
        long millis = hostNanos / 1_000_000;
        return new HostTime("host", hostNanos, clocks.wall().applyAsLong(millis), WallQuality.KNOWN);
    }

    @Override
    public void act(PassageView passage, Act act) {
        watch.act(passage.id(), act);
    }

    @Override
    public void announce(PassageView passage, long forMillis) {
        watch.announced(passage.id(), forMillis);
    }

    @Override
    public void bond(PassageView passage) {
        sim.bond(passage.channel());
        sim.contain(passage.channel(), true);
    }

    @Override
    public void meter(PassageView passage) {
        watch.metered(passage.id(), Technician.meterVolts(sim.truth(passage.channel())));
    }

    @Override
    public void part(PassageView passage) {
        sim.part(passage.channel());
    }

    private final class Direct implements BoardControl {
        @Override
        public void setLoad(String board, int channel, boolean closed) {
            session.setLoad(channel, closed);
        }

        @Override
        public void openAllLoads(String board) {
            session.openAllLoads();
        }

        @Override
        public boolean checkLead(String board, int channel) {
            return session.checkLead(channel).isPresent();
        }

        @Override
        public boolean blink(String board, int channel, int seconds) {
            return session.blink(channel, seconds).isPresent();
        }
    }

    private static final class Nothing implements TraceLog, PassageLog {
        @Override
        public void identified(String board, BoardBasis basis) {}

        @Override
        public void append(String board, BoardScan scan) {}

        @Override
        public void opened(PassageCard card) {}

        @Override
        public void entered(UUID passage, long sequence, long lastScanMillis, Entry entry) {}

        @Override
        public void happened(UUID passage, long sequence, long eventMillis, Event event) {}

        @Override
        public void commit() {}
    }

    /** Remembers which findings were raised on which channel, and hands everything on. */
    private final class Remembered implements PassageLog {
        private final PassageLog next;
        private final Map<UUID, Integer> channels = new HashMap<>();

        private Remembered(PassageLog next) {
            this.next = next;
        }

        @Override
        public void opened(PassageCard card) {
            channels.put(card.id(), card.channel());
            next.opened(card);
        }

        @Override
        public void entered(UUID passage, long sequence, long lastScanMillis, Entry entry) {
            next.entered(passage, sequence, lastScanMillis, entry);
        }

        @Override
        public void happened(UUID passage, long sequence, long eventMillis, Event event) {
            if (event instanceof Raised now) {
                raised.add(new Raising(channels.get(passage), now.finding()));
            }
            next.happened(passage, sequence, eventMillis, event);
        }

        @Override
        public void commit() {
            next.commit();
        }
    }
}
