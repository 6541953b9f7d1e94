package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.acquire.BoardSession;
import org.ebbwatch.acquire.LinkQuality;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.acquire.RackLock;
import org.ebbwatch.alarm.AcknowledgeLinks;
import org.ebbwatch.alarm.AlarmClerk;
import org.ebbwatch.alarm.AlarmDesk;
import org.ebbwatch.alarm.AlarmLinkClerk;
import org.ebbwatch.alarm.AlarmLinkDesk;
import org.ebbwatch.alarm.AlarmReply;
import org.ebbwatch.alarm.AlarmRequest;
import org.ebbwatch.alarm.AlarmRequests;
import org.ebbwatch.alarm.AlarmSource;
import org.ebbwatch.alarm.AlarmsView;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.alarm.book.Route;
import org.ebbwatch.alarm.outlet.Outbox;
import org.ebbwatch.alarm.outlet.Outlet;
import org.ebbwatch.evening.EveningCheck;
import org.ebbwatch.evening.EveningChecks;
import org.ebbwatch.evening.EveningDesk;
import org.ebbwatch.evening.EveningReply;
import org.ebbwatch.intake.CardAdmission;
import org.ebbwatch.intake.IntakeBook;
import org.ebbwatch.intake.IntakeDesk;
import org.ebbwatch.passage.BoardControl;
import org.ebbwatch.passage.CalibrationDesk;
import org.ebbwatch.passage.ClosedPassage;
import org.ebbwatch.passage.ContactInput;
import org.ebbwatch.passage.DeskAnswer;
import org.ebbwatch.passage.DeskRequest;
import org.ebbwatch.passage.Happenings;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.RackDesk;
import org.ebbwatch.passage.RackSource;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.passage.RackWatch;
import org.ebbwatch.passage.RestPrediction;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.passage.WatchDesk;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.sim.rack.SimBoard;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.store.AlarmStepRow;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.LastSeen;
import org.ebbwatch.time.WallQuality;

/**
 * One simulated board, called bench, with the whole service behind it short of threads and ports: time goes on only when a test
 * says so. Its records are real and may be opened again by another of these. Its wall clock begins at 2026-11-25T08:00Z and keeps
 * pace with event time.
 */
public final class QuietRack implements RackSource, RackDesk, AlarmSource, AlarmRequests, EveningChecks, AutoCloseable {
    /** The name of the board. */
    public static final String BOARD = "bench";

    /** Where links of messages lead to. */
    public static final String ADDRESS = "https://rack.example";

    /** 2026-11-25T08:00Z. */
    public static final long BEGIN_WALL_MILLIS = 1_795_593_600_000L;

    private static final int SPEED = 3_600;
    private static final long INTERVAL_MILLIS = 2_000;
    private static final long LONGEST_MILLIS = 10L * 86_400_000;
    private static final long FLUSH_EVERY_MILLIS = 600_000;

    private final SimBoard sim;
    private final StoredRack storage;
    private final Happenings happenings;
    private final RackWatch watch;
    private final WatchDesk desk;
    private final IntakeDesk intakes;
    private final List<Outbox> outboxes;
    private final AlarmDesk alarms;
    private final AlarmClerk clerk;
    private final EveningDesk evening;
    private final CalibrationDesk calibrations;
    private final AlarmLinkDesk links;
    private final BoardSession session;
    private final long beganMillis;
    private WallQuality wallQuality = WallQuality.KNOWN;
    private long freeBytes = 1L << 40;
    private boolean deafToClosing;
    private boolean deafToOpening;
    private long hostNanos;
    private long nextId;
    private long fedMillis;

    private QuietRack(SimBoard sim, Path records, List<Outlet> ways, List<ContactInput> contacts) {
        this.sim = sim;
        this.beganMillis = sim.eventMillis();
        this.storage = StoredRack.open(records);
        var control = new Direct();
        long run = storage.beginRun(wallMillis());
        this.happenings = new Happenings(run);
        Supplier<UUID> ids = () -> new UUID(run << 16 | 0x7000, ++nextId);
        this.outboxes = ways.stream()
                .map(way -> new Outbox(way, (message, wall) -> storage.alarms().sent(message.id(), wall)))
                .toList();
        var signed = new AcknowledgeLinks(URI.create(ADDRESS), new byte[32]);
        Map<Outbox, Route> routes = new LinkedHashMap<>();
        outboxes.forEach(outbox -> routes.put(outbox, Route.ALL));
        this.alarms =
                new AlarmDesk(NightHours.usual(ZoneOffset.UTC), storage, routes, signed, ids, this::now, happenings);
        this.clerk = new AlarmClerk(alarms, storage);
        this.links = new AlarmLinkClerk(alarms, clerk, signed, this::now, new RackLock());
        this.watch = new RackWatch(storage, storage, control, ids, alarms, happenings);
        IntakeBook cards = IntakeBook.of(storage.intakes());
        this.intakes = new IntakeDesk(cards, storage::tags, this::now);
        this.desk = new WatchDesk(watch, storage, control, this::wallMillis, new CardAdmission(cards));
        this.session = new BoardSession(
                BOARD, Optional.empty(), storage.clock(BOARD), watch, frame -> sim.receive(frame, 0, frame.length));
        this.evening = new EveningDesk(
                watch, control, alarms, clerk, storage, ids, this::now, board -> session.counts(), () -> freeBytes);
        this.calibrations = new CalibrationDesk(watch, storage, ids, this::now);
        watch.afterEachScan(evening::scanned);
        watch.expect(BOARD, contacts);
        storage.openCards().forEach(card -> watch.takeUp(storage.takeUp(card)));
        alarms.resume(watch.standings());
        session.opened(now());
        exchange();
        step();
    }

    /** Where the cards of cells are written and read. */
    public IntakeDesk intakes() {
        return intakes;
    }

    /** A rack whose board has just been switched on and was heard once. */
    public static QuietRack of(BoardSpec board, Path records) {
        return of(board, records, List.of());
    }

    /** The same, with ways by which alarms leave. */
    public static QuietRack of(BoardSpec board, Path records, List<Outlet> ways) {
        return of(board, records, ways, List.of());
    }

    /** The same, with what is wired to the contact inputs of its board. */
    public static QuietRack of(BoardSpec board, Path records, List<Outlet> ways, List<ContactInput> contacts) {
        return new QuietRack(new SimBoard(board, 5, SPEED, INTERVAL_MILLIS), records, ways, contacts);
    }

    /** The same with a board that measures every so many milliseconds, and what is wired to its contact inputs. */
    public static QuietRack of(BoardSpec board, long intervalMillis, Path records, List<ContactInput> contacts) {
        return new QuietRack(new SimBoard(board, 5, SPEED, intervalMillis), records, List.of(), contacts);
    }

    /** The same with a board that measures every so many milliseconds. */
    public static QuietRack of(BoardSpec board, long intervalMillis, Path records) {
        return new QuietRack(new SimBoard(board, 5, SPEED, intervalMillis), records, List.of(), List.of());
    }

    /** Another run of the service over the same board and records; this one must be closed. */
    public QuietRack again(Path records) {
        return new QuietRack(sim, records, List.of(), List.of());
    }

    /** Lets the outlets send what waits. */
    public synchronized void deliver() {
        try {
            for (Outbox outbox : outboxes) {
                while (outbox.attempt(now()) == 0) {
                    // The next one.
                }
            }
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Where channels are calibrated. */
    public CalibrationDesk calibrations() {
        return calibrations;
    }

    @Override
    public synchronized Map<String, LinkQuality> linkQualities() {
        return Map.of(BOARD, session.quality());
    }

    /** Its records. */
    public StoredRack storage() {
        return storage;
    }

    /** Where links of messages lead to. */
    public AlarmLinkDesk links() {
        return links;
    }

    /** What the records do when a service starts over them at that time. */
    public synchronized void beginRun(long atWallMillis) {
        storage.beginRun(atWallMillis);
    }

    /** Every step of an alarm, as the records tell it. */
    public synchronized List<AlarmStepRow> steps(UUID alarm) {
        return storage.alarms().steps(alarm);
    }

    /** The cells on the bench, for hands. */
    public SimBoard hands() {
        return sim;
    }

    /** One scan. */
    public synchronized void step() {
        sim.step();
        hostNanos += sim.intervalMillis() * 1_000_000 / SPEED;
        exchange();
        alarms.tick(watch::eventMillis);
        evening.tick();
        storage.commit();
        alarms.committed();
        if (sim.eventMillis() % FLUSH_EVERY_MILLIS == 0) {
            storage.flush();
        }
    }

    /** Time goes by. */
    public void pass(long millis) {
        assertThat(millis).isLessThanOrEqualTo(LONGEST_MILLIS);
        long until = sim.eventMillis() + millis;
        while (sim.eventMillis() < until) {
            step();
        }
    }

    /** So many scans in which every channel reads so many volts, whatever is on the bench; its own time stands still for them. */
    public synchronized void feed(double volts, int scans) {
        int channels = session.identity().orElseThrow().channels().size();
        for (int i = 0; i < scans; i++) {
            fedMillis = Math.max(fedMillis, watch.eventMillis(BOARD)) + INTERVAL_MILLIS;
            hostNanos += INTERVAL_MILLIS * 1_000_000;
            var seen = new LastSeen(fedMillis, 5, fedMillis, fedMillis / INTERVAL_MILLIS, now());
            BoardScan scan = new BoardScan(channels).stamp(seen, 0, false);
            for (int channel = 0; channel < channels; channel++) {
                int counts = (int) Math.round(
                        volts / session.identity().orElseThrow().scales().volts(1));
                scan.channel(channel, Reading.VOLTS_VALID, counts + i % 2, 0, 0);
            }
            watch.scan(BOARD, scan);
        }
    }

    /** What the service's records say of a passage: everything entered into its journal, as text. */
    public synchronized List<String> journal(UUID passage) {
        storage.flush();
        return storage.openCards().stream()
                .filter(card -> card.id().equals(passage))
                .flatMap(card -> {
                    var lines = new JournalLines();
                    storage.read(card, lines);
                    return lines.lines().stream();
                })
                .toList();
    }

    /** Phase changes and findings of a passage as they were written down, and as folding its records again gives them. */
    public synchronized List<List<String>> recordedAndFoldedAgain(UUID passage) {
        storage.flush();
        PassageCard card = storage.cards().stream()
                .filter(each -> each.id().equals(passage))
                .findFirst()
                .orElseThrow();
        return List.of(storage.recorded(card), storage.refold(card).events());
    }

    /** The passages that are open by the service's records. */
    public synchronized List<PassageCard> openPassages() {
        storage.flush();
        return storage.openCards();
    }

    /** The host has no idea what time it is. */
    public synchronized void loseTheTime() {
        wallQuality = WallQuality.UNSYNCHRONISED;
    }

    /** So much room is left on the disk. */
    public synchronized void leaveRoom(long bytes) {
        freeBytes = bytes;
    }

    /** The board's clock is found odd, as on a rack at real speed. */
    public synchronized void findTheClockOdd() {
        watch.clockOdd(BOARD, 1.02, true);
    }

    /** From now on no load closes, or none opens, whatever is asked. */
    public synchronized void breakSwitches(boolean closing) {
        deafToClosing |= closing;
        deafToOpening |= !closing;
    }

    /** The link to the board is lost and comes back. */
    public synchronized void replug() {
        session.lost("The plug came out.", now());
        session.opened(now());
        exchange();
    }

    /** The link to the board says something. */
    public synchronized void linkSays(String detail) {
        watch.link(BOARD, LinkState.CONNECTED, detail);
    }

    public Happenings happenings() {
        return happenings;
    }

    /** Milliseconds since 1970 by the wall clock of this invented place. */
    public long wallMillis() {
        return BEGIN_WALL_MILLIS + sim.eventMillis() - beganMillis;
    }

    @Override
    public synchronized RackView view() {
        return watch.view();
    }

    @Override
    public synchronized Optional<RestPrediction> restPrediction(UUID passage) {
        return view().passage(passage)
                .flatMap(it -> it.restingSince().flatMap(since -> storage.restPrediction(it.card(), since)));
    }

    @Override
    public synchronized Optional<List<TracePoint>> trace(UUID passage, Window window, int points) {
        storage.flush();
        return watch.card(passage).or(() -> storage.card(passage)).map(card -> storage.trace(card, window, points));
    }

    @Override
    public List<ClosedPassage> closed(Optional<UUID> before, int most) {
        return storage.closed(before, most);
    }

    @Override
    public synchronized AlarmsView alarms() {
        return alarms.view();
    }

    @Override
    public synchronized AlarmReply ask(AlarmRequest request, String key) {
        return clerk.ask(request, key);
    }

    @Override
    public synchronized DeskAnswer ask(DeskRequest request, String key) {
        return desk.ask(request, key);
    }

    @Override
    public synchronized EveningReply startEvening(String by, int touchMinutes, String key) {
        return evening.startEvening(by, touchMinutes, key);
    }

    @Override
    public synchronized EveningReply heardBy(UUID check, String outlet, String by) {
        return evening.heardBy(check, outlet, by);
    }

    @Override
    public synchronized EveningReply finishEvening(UUID check) {
        return evening.finishEvening(check);
    }

    @Override
    public synchronized Optional<EveningCheck> evening(UUID check) {
        return evening.evening(check);
    }

    @Override
    public synchronized List<EveningCheck> evenings() {
        return evening.evenings();
    }

    @Override
    public synchronized void close() {
        storage.close();
    }

    private void exchange() {
        byte[] bytes = sim.takeOutput();
        while (bytes.length > 0) {
            session.accept(bytes, 0, bytes.length, now());
            bytes = sim.takeOutput();
        }
        session.tick(now());
    }

    private HostTime now() {
        return new HostTime("host", hostNanos, wallMillis(), wallQuality);
    }

    private final class Direct implements BoardControl {
        @Override
        public void setLoad(String board, int channel, boolean closed) {
            if (closed ? !deafToClosing : !deafToOpening) {
                session.setLoad(channel, closed);
            }
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
}
