package org.ebbwatch.rack;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.function.Supplier;
import org.ebbwatch.acquire.BoardAgent;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.acquire.LinkQuality;
import org.ebbwatch.acquire.Port;
import org.ebbwatch.acquire.RackLock;
import org.ebbwatch.acquire.SerialNumbers;
import org.ebbwatch.alarm.AcknowledgeLinks;
import org.ebbwatch.alarm.AlarmClerk;
import org.ebbwatch.alarm.AlarmDesk;
import org.ebbwatch.alarm.AlarmHistory;
import org.ebbwatch.alarm.AlarmLinkClerk;
import org.ebbwatch.alarm.AlarmLinkDesk;
import org.ebbwatch.alarm.AlarmLinks;
import org.ebbwatch.alarm.AlarmReply;
import org.ebbwatch.alarm.AlarmRequest;
import org.ebbwatch.alarm.AlarmRequests;
import org.ebbwatch.alarm.AlarmSource;
import org.ebbwatch.alarm.AlarmWay;
import org.ebbwatch.alarm.AlarmsView;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.alarm.book.Raised;
import org.ebbwatch.alarm.book.Route;
import org.ebbwatch.alarm.outlet.Outbox;
import org.ebbwatch.alarm.outlet.OutletAgent;
import org.ebbwatch.evening.EveningCheck;
import org.ebbwatch.evening.EveningChecks;
import org.ebbwatch.evening.EveningDesk;
import org.ebbwatch.evening.EveningReply;
import org.ebbwatch.intake.CardAdmission;
import org.ebbwatch.intake.CardedPassages;
import org.ebbwatch.intake.IntakeBook;
import org.ebbwatch.intake.IntakeDesk;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.morning.MorningHour;
import org.ebbwatch.passage.Admission;
import org.ebbwatch.passage.BackupSource;
import org.ebbwatch.passage.CalibrationDesk;
import org.ebbwatch.passage.Calibrations;
import org.ebbwatch.passage.ClosedPassage;
import org.ebbwatch.passage.ContactInput;
import org.ebbwatch.passage.DeskAnswer;
import org.ebbwatch.passage.DeskRequest;
import org.ebbwatch.passage.DeskRequest.CheckIn;
import org.ebbwatch.passage.Happenings;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.PassageTeller;
import org.ebbwatch.passage.RackDesk;
import org.ebbwatch.passage.RackSource;
import org.ebbwatch.passage.RackStorage;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.passage.RackWatch;
import org.ebbwatch.passage.RestPrediction;
import org.ebbwatch.passage.WatchDesk;
import org.ebbwatch.passage.Wiring;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A rack at work: its boards connected, its passages watched, its readings kept, from {@link #start} to {@link #close}. Safe
 * for use by several threads.
 */
public final class RunningRack
        implements RackSource, RackDesk, AlarmSource, AlarmHistory, AlarmRequests, EveningChecks, AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(RunningRack.class);
    private static final long FLUSH_MILLIS = 250;
    private static final long JOIN_MILLIS = 5_000;

    private final RackLock lock = new RackLock();
    private final RackStorage storage;
    private final Happenings happenings;
    private final RackWatch watch;
    private final RackDesk people;
    private final IntakeDesk intakes;
    private final Admission admission;
    private final AlarmDesk desk;
    private final AlarmClerk clerk;
    private final EveningDesk evening;
    private final Calibrations calibrations;
    private final Optional<AlarmLinkDesk> links;
    private final List<OutletAgent> outlets;
    private final ConnectedBoards connected = new ConnectedBoards();
    private final NightHours night;
    private final HostClock clock;
    private Optional<MorningRound> morning = Optional.empty();
    private final CountDownLatch closing = new CountDownLatch(1);
    private final Thread keeper = new Thread(this::keep, "trace keeper");

    /**
     * One board of the rack.
     *
     * @param expectedSerialNumber refuse any other; empty: take the first that answers
     * @param ports gives a new, closed port for each attempt to connect
     * @param contacts what is wired to its contact inputs
     */
    public record BoardPort(
            String name, Optional<String> expectedSerialNumber, Supplier<Port> ports, List<ContactInput> contacts) {

        /** A board to which no contact is wired. */
        public BoardPort(String name, Optional<String> expectedSerialNumber, Supplier<Port> ports) {
            this(name, expectedSerialNumber, ports, List.of());
        }
    }

    /**
     * A rack not yet at work.
     *
     * @param night when nobody is woken for what can wait
     * @param ways by which alarms leave; may be empty
     * @param links by which messages can be acknowledged; empty: they carry none
     */
    public RunningRack(
            List<BoardPort> boards,
            RackStorage storage,
            NightHours night,
            List<AlarmWay> ways,
            Optional<AcknowledgeLinks> links,
            Supplier<UUID> ids,
            HostClock clock) {
        this.storage = storage;
        this.night = night;
        this.clock = clock;
        Map<Outbox, Route> outboxes = new LinkedHashMap<>();
        ways.forEach(way -> outboxes.put(
                new Outbox(way.outlet(), (message, wall) -> storage.alarms().sent(message.id(), wall)), way.route()));
        this.happenings = new Happenings(storage.beginRun(clock.now().wallMillis()));
        this.desk = new AlarmDesk(
                night,
                storage,
                outboxes,
                links.map(AlarmLinks.class::cast).orElse(AlarmLinks.NONE),
                ids,
                clock,
                happenings);
        this.clerk = new AlarmClerk(desk, storage);
        this.links = links.map(it -> new AlarmLinkClerk(desk, clerk, it, clock, lock));
        this.outlets = outboxes.keySet().stream()
                .map(outbox -> new OutletAgent(outbox, clock))
                .toList();
        this.watch = new RackWatch(storage, storage, connected, ids, desk, happenings);
        IntakeBook cards = IntakeBook.of(storage.intakes());
        this.intakes = new IntakeDesk(cards, storage::tags, clock);
        this.admission = new CardAdmission(cards);
        this.people = new WatchDesk(watch, storage, connected, () -> clock.now().wallMillis(), admission);
        this.evening = new EveningDesk(
                watch, connected, desk, clerk, storage, ids, clock, connected::counts, storage::freeBytes);
        this.calibrations = new LockedCalibrations(new CalibrationDesk(watch, storage, ids, clock), lock);
        watch.afterEachScan(evening::scanned);
        var serialNumbers = new SerialNumbers();
        for (BoardPort board : boards) {
            watch.expect(board.name(), board.contacts());
            connected.add(
                    board.name(),
                    new BoardAgent(
                            board.name(),
                            board.expectedSerialNumber(),
                            serialNumbers,
                            board.ports(),
                            storage.clock(board.name()),
                            watch,
                            lock,
                            clock));
        }
    }

    /** Takes up the passages and alarms an earlier run left open, then connects the boards. */
    public void start() {
        lock.run(() -> {
            storage.openCards().forEach(card -> watch.takeUp(storage.takeUp(card)));
            desk.resume(watch.standings());
        });
        outlets.forEach(OutletAgent::start);
        connected.start();
        keeper.start();
    }

    /**
     * Checks a cell in as soon as its board is heard, unless a cell of that tag ever had a passage here, or its card keeps it off the
     * rack.
     *
     * @return why its card does
     */
    public Optional<String> expect(String board, int channel, CellCard cell, Procedure procedure) {
        return lock.call(() -> {
            if (storage.tags().contains(cell.tag())) {
                return Optional.empty();
            }
            Optional<String> objection = admission.objection(new CheckIn(board, channel, cell, procedure));
            if (objection.isEmpty()) {
                watch.expectCell(board, channel, cell, procedure);
            }
            return objection;
        });
    }

    /** Where the cards of cells are written and read. */
    public IntakeDesk intakes() {
        return intakes;
    }

    /** Takes channels of a board as they are wired, against its own word; to be asked for before {@link #start}. */
    public void wire(String board, Wiring wiring) {
        lock.run(() -> watch.wire(board, wiring));
    }

    /** Sends a morning report at that hour by the outlets of these names; to be asked for before {@link #start}. */
    public void reportMornings(MorningHour hour, Set<String> outlets) {
        lock.run(() -> morning = Optional.of(new MorningRound(hour, outlets, night, watch, desk, storage, clock)));
    }

    /** Does something with the watch, alone. */
    public <T> T with(Function<RackWatch, T> work) {
        return lock.call(() -> work.apply(watch));
    }

    @Override
    public DeskAnswer ask(DeskRequest request, String key) {
        return lock.call(() -> people.ask(request, key));
    }

    @Override
    public AlarmReply ask(AlarmRequest request, String key) {
        return lock.call(() -> clerk.ask(request, key));
    }

    @Override
    public EveningReply startEvening(String by, int touchMinutes, String key) {
        return lock.call(() -> evening.startEvening(by, touchMinutes, key));
    }

    @Override
    public EveningReply heardBy(UUID check, String outlet, String by) {
        return lock.call(() -> evening.heardBy(check, outlet, by));
    }

    @Override
    public EveningReply finishEvening(UUID check) {
        return lock.call(() -> evening.finishEvening(check));
    }

    @Override
    public Optional<EveningCheck> evening(UUID check) {
        return lock.call(() -> evening.evening(check));
    }

    @Override
    public List<EveningCheck> evenings() {
        return lock.call(evening::evenings);
    }

    /**
     * Asks every board that has a buzzer to sound it.
     *
     * @param seconds 0 to 255; 0 stops it
     * @return whether any board was asked
     */
    public boolean buzz(int seconds) {
        return lock.call(() -> connected.buzz(seconds));
    }

    /** Where links of messages lead to; empty where messages carry none. */
    public Optional<AlarmLinkDesk> links() {
        return links;
    }

    /** Where channels are calibrated. */
    public Calibrations calibrations() {
        return calibrations;
    }

    @Override
    public Map<String, LinkQuality> linkQualities() {
        return lock.call(connected::qualities);
    }

    /** What a backup is made of, while watching goes on. */
    public BackupSource backupSource() {
        return new LockedBackup(storage.backupSource(), lock);
    }

    /** Tells its passages again, with the cards of their cells. */
    public PassageTeller teller() {
        return new CardedPassages(storage, intakes.records());
    }

    /** What happened lately. */
    public Happenings happenings() {
        return happenings;
    }

    @Override
    public AlarmsView alarms() {
        return lock.call(desk::view);
    }

    @Override
    public List<Raised> raisedSince(long wallMillis) {
        return desk.raisedSince(wallMillis);
    }

    @Override
    public RackView view() {
        return lock.call(watch::view);
    }

    /** Long traces take their time: they are read without the lock, so that nothing waits for them. */
    @Override
    public Optional<List<TracePoint>> trace(UUID passage, Window window, int points) {
        return card(passage).map(card -> storage.trace(card, window, points));
    }

    @Override
    public Optional<RestPrediction> restPrediction(UUID passage) {
        return view().passage(passage)
                .flatMap(it -> it.restingSince().flatMap(since -> storage.restPrediction(it.card(), since)));
    }

    private Optional<PassageCard> card(UUID passage) {
        return lock.call(() -> watch.card(passage).or(() -> storage.card(passage)));
    }

    @Override
    public List<ClosedPassage> closed(Optional<UUID> before, int most) {
        return storage.closed(before, most);
    }

    /** Lets go of the boards, then of the outlets, then writes what is left, then closes the storage. */
    @Override
    public void close() {
        closing.countDown();
        try {
            connected.close();
            keeper.join(JOIN_MILLIS);
            outlets.forEach(OutletAgent::close);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        lock.run(storage::close);
    }

    private void keep() {
        try {
            while (!closing.await(FLUSH_MILLIS, TimeUnit.MILLISECONDS)) {
                flush();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Storage that fails must not stop the watching: it is said, and tried again. */
    private void flush() {
        try {
            lock.run(() -> {
                try {
                    desk.look(watch::celsius, watch::eventMillis);
                    desk.tick(watch::eventMillis);
                    evening.tick();
                    morning.ifPresent(MorningRound::tick);
                } finally {
                    storage.flush();
                    desk.committed();
                }
            });
        } catch (RuntimeException e) {
            LOG.error("Readings could not be forced to disk; watching goes on, trying again", e);
        }
    }
}
