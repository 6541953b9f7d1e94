package org.ebbwatch.passage;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import org.ebbwatch.acquire.Answer;
import org.ebbwatch.acquire.BoardListener;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.calibration.Calibration;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Entry.LeadProof;
import org.ebbwatch.judge.Entry.Work;
import org.ebbwatch.judge.LoadStep;
import org.ebbwatch.judge.Outcome;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.LeadOutcome;
import org.ebbwatch.time.Gap;

/**
 * Watches every passage of a rack: turns what boards and people say into journal entries, folds them, writes down what
 * follows and carries out wishes.
 *
 * <p>Not thread-safe: all calls are made under the rack's one lock, in the order things happened.
 */
public final class RackWatch implements BoardListener {
    private static final long LONGEST_GAP_MILLIS = 10L * 365 * 86_400_000;

    private final TraceLog trace;
    private final PassageLog log;
    private final BoardControl control;
    private final Supplier<UUID> ids;
    private final RackObserver observer;
    private final Map<String, BoardWatch> boards = new LinkedHashMap<>();
    private final Passages passages = new Passages();
    private final Loads loads;
    private final ExpectedCells expected = new ExpectedCells();
    private final Contacts contacts;
    private final Bases bases = new Bases();
    private final Set<OpenPassage> changed = new LinkedHashSet<>();
    private final Happenings happenings;
    private final List<Happening> news = new ArrayList<>();
    private Consumer<String> scanned = board -> {};
    private boolean uncommitted;

    public RackWatch(TraceLog trace, PassageLog log, BoardControl control, Supplier<UUID> ids) {
        this(trace, log, control, ids, RackObserver.NONE, new Happenings(0));
    }

    public RackWatch(
            TraceLog trace,
            PassageLog log,
            BoardControl control,
            Supplier<UUID> ids,
            RackObserver observer,
            Happenings happenings) {
        this.trace = trace;
        this.log = log;
        this.control = control;
        this.loads = new Loads(this, control);
        this.ids = ids;
        this.observer = observer;
        this.contacts = new Contacts(loads, observer);
        this.happenings = happenings;
    }

    /** Calls this with the name of a board after each of its scans. */
    public void afterEachScan(Consumer<String> what) {
        scanned = scanned.andThen(what);
    }

    /** A board that the rack file names; it need not be there yet. */
    public void expect(String board) {
        boards.computeIfAbsent(board, BoardWatch::new);
    }

    /** The same, with what is wired to its contact inputs. */
    public void expect(String board, List<ContactInput> wired) {
        expect(board);
        contacts.wire(board, wired);
    }

    /** What the rack file says of the channels of a board; to be told before it is heard. */
    public void wire(String board, Wiring wiring) {
        bases.wire(board, wiring);
    }

    /** Takes the calibrations of a board, by its serial number, from here. */
    public void calibratedBy(Function<String, List<Calibration>> source) {
        bases.calibratedBy(source);
    }

    /** A cell to be checked in as soon as its board is heard, unless a passage is on that channel already. */
    public void expectCell(String board, int channel, CellCard cell, Procedure procedure) {
        expected.add(new ExpectedCells.Expected(board, channel, cell, procedure));
    }

    /**
     * Takes up a passage that an earlier run of the service left open. One that is judged otherwise now is held. To be
     * committed with the others.
     */
    public void takeUp(TakenUp takenUp) {
        var passage = new OpenPassage(takenUp.card(), log, takenUp.refolded());
        passages.add(passage);
        takenUp.otherPhase().ifPresent(left -> follow(passage, new Entry.JudgedAnew(now(passage), left)));
    }

    // ---- what boards say ----

    @Override
    public void identified(String board, Identity identity) {
        rest(board, identity);
        if (smokeStands()) {
            control.openAllLoads(board);
        }
    }

    /** The calibrations of a board have changed. */
    void recalibrated(String board) {
        watch(board).basis().ifPresent(basis -> rest(board, basis.said()));
    }

    /** Readings rest on this from now on; passages on channels that read otherwise now are told. */
    private void rest(String board, Identity said) {
        BoardWatch watch = watch(board);
        Optional<BoardBasis> before = watch.basis();
        BoardBasis now = bases.of(board, said);
        watch.rest(now);
        trace.identified(board, now);
        before.ifPresent(was -> each(board, passage -> {
            if (passage.readsOtherwise(was, now)) {
                follow(passage, new Entry.CalibrationChanged(now(passage)));
            }
        }));
    }

    @Override
    public void scan(String board, BoardScan scan) {
        BoardWatch watch = watch(board);
        trace.append(board, scan);
        watch.heard(scan);
        for (OpenPassage passage : passages.on(board)) {
            follow(passage, watch.reading(passage.card().channel(), passage.string()));
        }
        uncommitted |= contacts.follow(watch, scan);
        checkInExpected(board, scan.arrival().wallMillis());
        settle();
        scanned.accept(board);
    }

    /** Whether a contact anywhere on the rack reports smoke: no load may close. */
    boolean smokeStands() {
        return contacts.smokeStands();
    }

    private void checkInExpected(String board, long wallMillis) {
        if (!expected.any(board)) {
            return;
        }
        observer.heard(board);
        uncommitted = true;
        for (ExpectedCells.Expected cell : expected.take(board)) {
            if (passages.on(board, cell.channel()).isEmpty()) {
                Optional<String> obstacle = obstacle(board, cell.channel(), cell.cell());
                obstacle.ifPresent(why -> expected.unwatched(cell, why));
                if (obstacle.isEmpty()) {
                    open(board, cell.channel(), cell.cell(), cell.procedure(), wallMillis);
                }
            }
        }
        settle();
    }

    @Override
    public void silent(String board, long eventMillis) {
        watch(board).silent();
        if (expected.any(board)) {
            observer.unheard(board, eventMillis);
            uncommitted = true;
        }
        each(board, passage -> follow(passage, new Entry.Silence(since(passage, eventMillis))));
    }

    @Override
    public void gap(String board, Gap gap) {
        long most = Math.min(gap.mostMillis(), LONGEST_GAP_MILLIS);
        long least = Math.min(gap.leastMillis(), most);
        each(board, passage -> follow(passage, new Entry.Gap(now(passage), least, most)));
    }

    @Override
    public void rebooted(String board, long bootNumber) {
        each(board, passage -> follow(passage, new Entry.Reboot(now(passage))));
    }

    @Override
    public void clockOdd(String board, double ratio, boolean odd) {
        watch(board).clockOdd(odd);
        each(board, passage -> follow(passage, new Entry.ClockJudged(now(passage), odd)));
    }

    @Override
    public void leadChecked(String board, int channel, LeadOutcome outcome, int voltsBeforeCounts, int voltsDuring) {
        LeadProof proof =
                switch (outcome) {
                    case ATTACHED -> LeadProof.ATTACHED;
                    case OPEN -> LeadProof.OPEN;
                    case NOT_DONE -> LeadProof.NOT_DONE;
                };
        passages.on(board, channel).ifPresent(passage -> follow(passage, new Entry.LeadChecked(now(passage), proof)));
        settle();
    }

    @Override
    public void answered(String board, int requestSequence, Answer answer) {
        // The load bit of the next scan and the judge's own deadlines tell what became of a request.
    }

    @Override
    public void link(String board, LinkState state, String detail) {
        BoardWatch watch = watch(board);
        watch.link(state, detail);
        news.add(new Happening(
                Happening.Kind.LINK, board, Optional.empty(), "", -1, watch.eventMillis(), 0, state.name(), detail));
        tell();
    }

    // ---- what people say ----

    /**
     * Opens a passage for a cell on a channel.
     *
     * @throws IllegalStateException if the board is not known yet, the channel is no cell channel, or another cell is on it
     */
    public PassageCard checkIn(String board, int channel, CellCard cell, Procedure procedure, long wallMillis) {
        BoardWatch watch = watch(board);
        if (!watch.isKnown() || watch.eventMillis() < 0) {
            throw new IllegalStateException("board " + board + " has not been heard yet");
        }
        obstacle(board, channel, cell).ifPresent(why -> {
            throw new IllegalStateException("the cell " + cell.tag() + " cannot be checked in: " + why);
        });
        passages.on(board, channel).ifPresent(other -> {
            throw new IllegalStateException("channel " + channel + " of board " + board + " holds the cell "
                    + other.card().cell().tag());
        });
        OpenPassage passage = open(board, channel, cell, procedure, wallMillis);
        settle();
        return passage.opened();
    }

    /** Why a cell cannot be watched on a channel of a board that is known; empty if it can. */
    private Optional<String> obstacle(String board, int channel, CellCard cell) {
        BoardWatch watch = watch(board);
        if (!watch.isCell(channel)) {
            return Optional.of("Channel " + channel + " of board " + board + " is no cell channel.");
        }
        Optional<String> unfit = cell.inString() ? ChannelFit.forCell(watch, channel, cell) : Optional.empty();
        return unfit.or(() -> loads.inTheWay(board, channel, cell));
    }

    /** The same, not settled yet, where nothing is in the way. */
    OpenPassage open(String board, int channel, CellCard cell, Procedure procedure, long wallMillis) {
        BoardWatch watch = watch(board);
        long at = watch.eventMillis() + 1;
        int speed = watch.simulatedSpeed();
        var card = new PassageCard(ids.get(), board, channel, cell, procedure, at, wallMillis, speed);
        log.opened(card);
        var passage = new OpenPassage(card, log);
        passages.add(passage);
        news.add(passage.happening(
                Happening.Kind.OPENED, at, cell.tag(), passage.judge().reason()));
        uncommitted = true;
        return passage;
    }

    /** A person did, or wants to do, something; refused where the passage does not allow it. */
    public ActAnswer act(UUID id, Act act) {
        OpenPassage passage = passage(id);
        if (!passage.judge().allowed().contains(act)) {
            return new ActAnswer.NotNow(
                    passage.judge().phase(), act, passage.judge().allowed());
        }
        loads.act(passage, act);
        settle();
        return new ActAnswer.Done(passage.judge().phase());
    }

    /** A person measured the terminals with a meter. */
    public void metered(UUID id, double volts) {
        OpenPassage passage = openPassage(id);
        follow(passage, new Entry.Metered(now(passage), volts));
        settle();
    }

    /** A person announces work on the channel for so long. */
    public void announced(UUID id, long forMillis) {
        announced(id, forMillis, Optional.empty());
    }

    /** The same; says which work. */
    public void announced(UUID id, long forMillis, Optional<Work> work) {
        OpenPassage passage = openPassage(id);
        long at = now(passage);
        follow(passage, new Entry.Announced(at, at + forMillis, work));
        settle();
    }

    /** What is fixed of a passage, open or closed. */
    public Optional<PassageCard> card(UUID id) {
        return passages.find(id).map(OpenPassage::opened);
    }

    /** What is known of every board besides what people are shown. */
    public List<BoardGlance> boardGlances() {
        return boards.values().stream().map(BoardWatch::glance).toList();
    }

    /** What is known of every passage that is not over, besides what people are shown. */
    public List<PassageGlance> glances() {
        return passages.open().stream()
                .filter(passage -> !passage.judge().phase().isOver())
                .map(passage -> passage.glance(watch(passage.card().board())))
                .toList();
    }

    /** What stands on every passage that is not over. */
    public List<PassageStanding> standings() {
        return passages.open().stream().map(OpenPassage::standing).toList();
    }

    /** Event time of a board's last scan; -1 before the first, and for a board there is not. */
    public long eventMillis(String board) {
        return boards.containsKey(board) ? boards.get(board).eventMillis() : -1;
    }

    /** What the sensor of a passage's cell says now; NaN where nothing is to be believed. */
    public double celsius(UUID id) {
        return passages.find(id)
                .map(OpenPassage::card)
                .map(card -> watch(card.board()).latestCelsius(card.channel()))
                .orElse(Double.NaN);
    }

    /** What the readings of a board rest on; empty while it has not said who it is. */
    public Optional<BoardBasis> basis(String board) {
        return Optional.ofNullable(boards.get(board)).flatMap(BoardWatch::basis);
    }

    /** The latest reading of every channel of a board that was heard, each for itself. */
    public List<Entry.Scan> readings(String board) {
        return boards.get(board).readings();
    }

    /** How the readings of every board of the rack come in. */
    public List<BoardPulse> pulses() {
        return boards.values().stream().map(BoardWatch::pulse).toList();
    }

    /** The rack at this moment. */
    public RackView view() {
        List<RackView.BoardView> boardViews = new ArrayList<>();
        List<RackView.ChannelView> channelViews = new ArrayList<>();
        for (BoardWatch board : boards.values()) {
            boardViews.add(board.view());
            channelViews.addAll(board.channelViews());
        }
        List<String> unwatched = new ArrayList<>(expected.unwatched());
        boards.values().forEach(board -> {
            unwatched.addAll(contacts.missing(board));
            unwatched.addAll(bases.missing(board));
        });
        return new RackView(boardViews, channelViews, passages.views(), unwatched);
    }

    // ---- how it is followed ----

    /** Folds an entry and carries out what is wished; {@link #settle()} makes it last. */
    void follow(OpenPassage passage, Entry entry) {
        follow(passage, entry, false);
    }

    /** The same; {@code loadSeenTo} where the caller sees to the load itself. */
    void follow(OpenPassage passage, Entry entry, boolean loadSeenTo) {
        Optional<LoadStep> seemed = passage.seems();
        Outcome outcome = passage.fold(entry);
        passage.news(entry, outcome, seemed, news);
        uncommitted |= !(entry instanceof Entry.Scan);
        for (Outcome.Event event : outcome.events()) {
            if (event instanceof Outcome.Wished wished && wished.wish() == Wish.OPEN_LOAD && loadSeenTo) {
                continue;
            }
            if (event instanceof Outcome.Wished wished) {
                carryOut(passage, wished.wish());
            } else {
                uncommitted = true;
                changed.add(passage);
            }
        }
    }

    private void carryOut(OpenPassage passage, Wish wish) {
        String board = passage.card().board();
        int channel = passage.card().channel();
        switch (wish) {
            case CLOSE_LOAD -> loads.close(passage);
            case OPEN_LOAD -> loads.open(passage);
            case CHECK_LEAD -> {
                boolean asked = watch(board).can(channel, Ability.LEAD_CHECK) && control.checkLead(board, channel);
                if (!asked) {
                    follow(passage, new Entry.LeadChecked(now(passage), LeadProof.NOT_DONE));
                }
            }
            case OPEN_STRING -> loads.openForGood(passage);
            case ASK_PUT_ON, ASK_TAKE_OFF, ASK_TIE_OFF, ASK_PART, ASK_RELEASE, ASK_METER -> {}
        }
    }

    /** The same, also where only a receipt was written. */
    void settleNow() {
        uncommitted = true;
        settle();
    }

    /** Makes all that happened last, then tells of it. */
    void settle() {
        if (uncommitted) {
            List<PassageStanding> standings =
                    changed.stream().map(OpenPassage::standing).toList();
            changed.clear();
            try {
                observer.changed(standings);
            } finally {
                log.commit();
                uncommitted = false;
            }
            observer.committed();
            passages.sortOut();
        }
        tell();
    }

    private void tell() {
        happenings.add(news);
        news.clear();
    }

    private void each(String board, Consumer<OpenPassage> what) {
        passages.on(board).forEach(what);
        settle();
    }

    /** Event time at which something is entered into a passage now. */
    long now(OpenPassage passage) {
        return since(passage, watch(passage.card().board()).eventMillis());
    }

    private static long since(OpenPassage passage, long eventMillis) {
        return Math.max(
                Math.max(eventMillis, passage.card().openedMillis()),
                passage.judge().lastMillis());
    }

    /** Open or closed. */
    private OpenPassage passage(UUID id) {
        return passages.find(id).orElseThrow(() -> new IllegalArgumentException("there is no passage " + id));
    }

    private OpenPassage openPassage(UUID id) {
        OpenPassage passage = passage(id);
        if (passage.judge().phase().isOver()) {
            throw new IllegalStateException(
                    "the passage " + id + " is over: " + passage.judge().phase());
        }
        return passage;
    }

    Passages passages() {
        return passages;
    }

    Loads loads() {
        return loads;
    }

    /** The boards there are, in the order of the rack file. */
    Map<String, BoardWatch> boards() {
        return boards;
    }

    private BoardWatch watch(String board) {
        return boards.computeIfAbsent(board, BoardWatch::new);
    }
}
