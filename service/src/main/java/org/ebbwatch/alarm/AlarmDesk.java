package org.ebbwatch.alarm;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import java.util.function.ToLongFunction;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.alarm.book.Alarm;
import org.ebbwatch.alarm.book.AlarmAnswer;
import org.ebbwatch.alarm.book.AlarmBook;
import org.ebbwatch.alarm.book.AlarmEvent;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.Cause;
import org.ebbwatch.alarm.book.Moment;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.alarm.book.Raised;
import org.ebbwatch.alarm.book.Report;
import org.ebbwatch.alarm.book.Report.Condition;
import org.ebbwatch.alarm.book.Route;
import org.ebbwatch.alarm.outlet.Outbox;
import org.ebbwatch.passage.ContactInput.Means;
import org.ebbwatch.passage.Happening;
import org.ebbwatch.passage.Happenings;
import org.ebbwatch.passage.PassageStanding;
import org.ebbwatch.passage.RackObserver;
import org.ebbwatch.passage.RackStorage;
import org.ebbwatch.store.AlarmTable;
import org.ebbwatch.store.WallLabel;
import org.ebbwatch.time.HostTime;

/**
 * Keeps the {@link AlarmBook} of a rack. What follows from facts is written down before these facts are committed, and handed
 * to the outlets after: an alarm that was sent is on disk. While storage is away it is sent all the same, from memory.
 *
 * <p>Not thread-safe: all calls are made under the rack's lock.
 */
public final class AlarmDesk implements RackObserver {
    private static final String SERVICE = "";
    private static final String STORAGE = "storage";
    private static final String TEST = "evening check";
    private static final int LONGEST_TROUBLE = 500;

    private final AlarmBook book;
    private final RackStorage storage;
    private final AlarmTable table;
    private final AlarmPost post;
    private final HostClock clock;
    private final Happenings happenings;
    private final List<Happening> news = new ArrayList<>();
    private final Map<String, Report> boardNews = new LinkedHashMap<>();
    private final WarmingCells warming = new WarmingCells();
    private boolean storageInTrouble;

    /**
     * A desk with an empty book.
     *
     * @param outboxes the ways out, each already bound to its outlet, and of what they are told
     * @param links by which messages can be acknowledged
     * @param ids gives time-ordered identifiers
     * @param happenings is told of every step
     */
    public AlarmDesk(
            NightHours night,
            RackStorage storage,
            Map<Outbox, Route> outboxes,
            AlarmLinks links,
            Supplier<UUID> ids,
            HostClock clock,
            Happenings happenings) {
        this.book = new AlarmBook(night, ids);
        this.storage = storage;
        this.table = storage.alarms();
        this.post = new AlarmPost(table, outboxes, links, ids);
        this.clock = clock;
        this.happenings = happenings;
    }

    /**
     * Reads back book and outboxes of an earlier run and goes on with what stands now.
     *
     * @throws org.ebbwatch.store.StorageException if they cannot be read
     */
    public void resume(List<PassageStanding> passages) {
        HostTime now = clock.now();
        List<Alarm> living = table.living().stream().map(AlarmJson::alarm).toList();
        post.resume(living, moment(now));
        write(book.resume(living, passages.stream().map(warming::report).toList(), moment(now)), now);
        commit();
    }

    @Override
    public void changed(List<PassageStanding> passages) {
        List<Report> reports = new ArrayList<>(boardNews.values());
        boardNews.clear();
        passages.forEach(passage -> reports.add(warming.report(passage)));
        report(reports);
    }

    @Override
    public void unheard(String board, long eventMillis) {
        var silent = new Condition(
                AlarmKind.SILENT,
                Cause.ofBoard(board, eventMillis, "Nothing heard from the board; cells wait to be checked in on it."));
        boardNews.put(board, new Report(source(board), board, eventMillis, false, List.of(silent)));
    }

    @Override
    public void heard(String board) {
        boardNews.put(board, new Report(source(board), board, 0, true, List.of()));
    }

    @Override
    public void contacts(String board, long eventMillis, Set<Means> standing) {
        List<Condition> conditions = standing.stream()
                .map(means -> new Condition(
                        AlarmKind.valueOf(means.name()),
                        Cause.ofBoard(board, eventMillis, "A contact of board " + board + " says so.")))
                .toList();
        String source = "contacts of " + source(board);
        boardNews.put(source, new Report(source, board, eventMillis, false, conditions));
    }

    private static String source(String board) {
        return "board " + board;
    }

    /** Hands over what is written down. */
    @Override
    public void committed() {
        happenings.add(news);
        news.clear();
        post.committed();
    }

    /**
     * Lets time pass, about once a second. To be followed by a commit and {@link #committed}.
     *
     * @param eventMillis gives the event time of a board
     */
    public void tick(ToLongFunction<String> eventMillis) {
        HostTime now = clock.now();
        Optional<String> trouble = storage.trouble();
        if (trouble.isPresent() != storageInTrouble) {
            storageInTrouble = trouble.isPresent();
            report(List.of(new Report(
                    STORAGE,
                    SERVICE,
                    moment(now).monotonicMillis(),
                    false,
                    trouble.stream()
                            .map(line -> line.substring(0, Math.min(line.length(), LONGEST_TROUBLE)))
                            .map(line -> new Condition(AlarmKind.STORAGE_FAULT, Cause.ofService(line)))
                            .toList())));
        }
        write(
                book.tick(
                        moment(now),
                        board ->
                                board.equals(SERVICE) ? moment(now).monotonicMillis() : eventMillis.applyAsLong(board)),
                now);
        post.tellLate(book.alive(), moment(now), wall(now));
    }

    /** Raises the test alarm, or takes it back; committed when this returns. */
    public void test(boolean stands) {
        Condition test = new Condition(AlarmKind.TEST, Cause.ofService("Somebody checks the rack before the night."));
        long now = moment(clock.now()).monotonicMillis();
        report(List.of(new Report(TEST, SERVICE, now, !stands, stands ? List.of(test) : List.of())));
        commit();
    }

    /** Looks whether a cell of many that warm slightly has become hot or fast; to be called before {@link #tick}. */
    public void look(ToDoubleFunction<UUID> celsiusOf, ToLongFunction<String> eventMillis) {
        List<Report> turned = warming.look(celsiusOf, eventMillis);
        if (!turned.isEmpty()) {
            report(turned);
        }
    }

    // ---- what people ask ----

    /**
     * Does what a person asks, or refuses it and changes nothing.
     *
     * @param alongside writes down what is to last together with the step, before it is committed
     */
    AlarmAnswer ask(AlarmRequest request, Consumer<AlarmEvent> alongside) {
        HostTime now = clock.now();
        AlarmAnswer answer = answer(request, moment(now));
        if (answer instanceof AlarmAnswer.Done done) {
            write(List.of(done.event()), now);
            alongside.accept(done.event());
            commit();
        }
        return answer;
    }

    private AlarmAnswer answer(AlarmRequest request, Moment now) {
        UUID alarm = request.alarm();
        String who = request.by();
        return switch (request.step()) {
            case ACKNOWLEDGED -> book.acknowledge(alarm, who, now);
            case RESET -> book.reset(alarm, who, now);
            case SHELVED -> book.shelve(alarm, who, request.reason(), Duration.ofMinutes(request.minutes()), now);
            case SHELVING_ENDED -> book.endShelving(alarm, who, now);
            case TAKEN_OUT_OF_SERVICE -> book.takeOutOfService(alarm, who, request.reason(), now);
            case PUT_BACK_IN_SERVICE -> book.putBackInService(alarm, who, now);
            case RAISED, RETURNED, TOLD -> throw new IllegalStateException("no person asks for " + request.step());
        };
    }

    /** An alarm that is alive. */
    Optional<AlarmView> find(UUID id) {
        return book.alive().stream()
                .filter(alarm -> alarm.id().equals(id))
                .findFirst()
                .map(AlarmView::of);
    }

    /** The alarms and the outlets at this moment. */
    public AlarmsView view() {
        return new AlarmsView(
                book.alive().stream()
                        .map(AlarmView::of)
                        .sorted(AlarmView.NEEDED_FIRST)
                        .toList(),
                post.views());
    }

    /**
     * Every time an alarm was raised since then, oldest first; safe for use by several threads.
     *
     * @throws org.ebbwatch.store.StorageException if it cannot be read
     */
    public List<Raised> raisedSince(long wallMillis) {
        return table.raisedSince(wallMillis).stream().map(AlarmJson::raised).toList();
    }

    // ---- writing down ----

    private void report(List<Report> reports) {
        HostTime now = clock.now();
        write(book.report(reports, moment(now)), now);
    }

    private void commit() {
        storage.commit();
        committed();
    }

    private void write(List<AlarmEvent> events, HostTime now) {
        WallLabel wall = wall(now);
        for (AlarmEvent event : events) {
            var row = AlarmJson.row(event.alarm(), wall.quality());
            if (event.alarm().steps() == 1) {
                table.insert(row);
            } else {
                table.update(row);
            }
            table.append(AlarmJson.step(event, wall));
            news.add(AlarmNews.of(event));
            post.tell(event, wall);
        }
        book.takeAmended().forEach(alarm -> table.update(AlarmJson.row(alarm, wall.quality())));
    }

    /** Has a notice sent by the outlets of these names, once it is written down; to be followed by a commit. */
    public void send(RackNotice notice, Set<String> outlets) {
        HostTime now = clock.now();
        post.tell(notice, outlets, wall(now));
    }

    private static WallLabel wall(HostTime now) {
        return new WallLabel(now.wallMillis(), now.wallQuality().name().toLowerCase(Locale.ROOT));
    }

    private static Moment moment(HostTime now) {
        return new Moment(now.wallMillis(), now.monotonicNanos() / 1_000_000);
    }
}
