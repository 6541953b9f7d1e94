package org.ebbwatch.passage;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongSupplier;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.passage.DeskAnswer.Done;
import org.ebbwatch.passage.DeskAnswer.NotAdmitted;
import org.ebbwatch.passage.DeskAnswer.NotNow;
import org.ebbwatch.passage.DeskAnswer.Stale;
import org.ebbwatch.passage.DeskAnswer.Taken;
import org.ebbwatch.passage.DeskAnswer.Unable;
import org.ebbwatch.passage.DeskAnswer.UnfitChannel;
import org.ebbwatch.passage.DeskAnswer.UnknownBoard;
import org.ebbwatch.passage.DeskAnswer.UnknownPassage;
import org.ebbwatch.passage.DeskRequest.Announce;
import org.ebbwatch.passage.DeskRequest.Blink;
import org.ebbwatch.passage.DeskRequest.CheckIn;
import org.ebbwatch.passage.DeskRequest.Do;
import org.ebbwatch.passage.DeskRequest.Load;
import org.ebbwatch.passage.DeskRequest.Meter;
import org.ebbwatch.passage.DeskRequest.Move;
import org.ebbwatch.passage.DeskRequest.OnPassage;
import org.ebbwatch.rig.message.Ability;

/**
 * The desk of a watched rack: refuses what a passage does not allow, and enters the rest into its journal, together with the
 * receipt. Not thread-safe: all calls are made under the rack's one lock.
 */
public final class WatchDesk implements RackDesk {
    private static final Set<Act> NEED_VOLTS = Set.of(Act.PART, Act.SPARK, Act.DRAIN_AGAIN);
    private static final String OVER = "The passage is over.";
    private static final String LOADED = "Take the load off first: a load stays with its channel.";
    private static final String OWN_LOAD =
            "Its load was named at check-in; only a cell that left its string gets another.";
    private static final String STRING_LOADED = "Take the load of the string off first.";
    private static final String NO_VOLTS =
            "The channel it is on measures no volts. Put it back onto a cell channel first, and say so by a move.";

    private final RackWatch watch;
    private final ReceiptBook receipts;
    private final RackStorage storage;
    private final BoardControl control;
    private final LongSupplier wallMillis;
    private final Admission admission;

    public WatchDesk(
            RackWatch watch, RackStorage storage, BoardControl control, LongSupplier wallMillis, Admission admission) {
        this.watch = watch;
        this.receipts = new ReceiptBook(storage.receipts());
        this.storage = storage;
        this.control = control;
        this.wallMillis = wallMillis;
        this.admission = admission;
    }

    @Override
    public DeskAnswer ask(DeskRequest request, String key) {
        if (key.length() < KEY_SHORTEST || key.length() > KEY_LONGEST) {
            throw new IllegalArgumentException("a key has 8 to 200 characters, not " + key.length());
        }
        Optional<DeskAnswer> before = receipts.find(key, request, isOnDisk());
        if (before.isPresent()) {
            return before.get();
        }
        return request instanceof CheckIn checkIn ? checkIn(checkIn, key) : onPassage((OnPassage) request, key);
    }

    // ---- a new passage ----

    private DeskAnswer checkIn(CheckIn request, String key) {
        Map<String, BoardWatch> boards = watch.boards();
        BoardWatch board = boards.get(request.board());
        if (board == null) {
            return new UnknownBoard(request.board(), boards.keySet().stream().toList());
        }
        if (!board.isKnown() || board.eventMillis() < 0) {
            return new Unable(request.board(), "The board " + request.board() + " has not been heard yet.");
        }
        Optional<String> objection = admission.objection(request);
        if (objection.isPresent()) {
            return new NotAdmitted(request.cell().tag(), objection.get());
        }
        Optional<String> unfit = ChannelFit.forCell(board, request.channel(), request.cell());
        Optional<String> inTheWay = watch.loads().inTheWay(request.board(), request.channel(), request.cell());
        if (unfit.isPresent()) {
            return new UnfitChannel(
                    request.board(),
                    request.channel(),
                    unfit.get(),
                    ChannelFit.all(board, channel -> ChannelFit.forCell(board, channel, request.cell())));
        }
        Optional<DeskAnswer> taken = taken(request.board(), request.channel()).or(() -> tagTaken(request.cell()));
        if (taken.isPresent()) {
            return taken.get();
        }
        if (inTheWay.isPresent()) {
            return new UnfitChannel(request.board(), request.channel(), inTheWay.get(), List.of());
        }
        OpenPassage passage = watch.open(
                request.board(), request.channel(), request.cell(), request.procedure(), wallMillis.getAsLong());
        return done(request, key, passage);
    }

    private Optional<DeskAnswer> taken(String board, int channel) {
        return watch.passages()
                .on(board, channel)
                .map(other -> new Taken(
                        "Channel " + channel + " of board " + board,
                        other.card().id(),
                        other.card().cell().tag()));
    }

    private Optional<DeskAnswer> tagTaken(CellCard cell) {
        return watch.passages()
                .tagged(cell.tag())
                .map(other -> new Taken("The tag " + cell.tag(), other.card().id(), cell.tag()));
    }

    // ---- a passage there is ----

    private DeskAnswer onPassage(OnPassage request, String key) {
        Optional<OpenPassage> found = watch.passages().find(request.passage());
        if (found.isEmpty()) {
            return new UnknownPassage(request.passage());
        }
        OpenPassage passage = found.get();
        if (request.seen() != passage.changedSequence()) {
            return new Stale(request.passage(), request.seen(), passage.changedSequence());
        }
        if (passage.judge().phase().isOver()) {
            return notNow(passage, request, OVER);
        }
        if (request instanceof Do act) {
            return act(passage, act, key);
        }
        if (request instanceof Move move) {
            return move(passage, move, key);
        }
        if (request instanceof Load load) {
            return load(passage, load, key);
        }
        if (request instanceof Blink blink) {
            return blink(passage, blink, key);
        }
        return enter(passage, request, key);
    }

    private DeskAnswer act(OpenPassage passage, Do request, String key) {
        Act act = request.act();
        Set<Act> allowed = passage.judge().allowed();
        if (!allowed.contains(act)) {
            return notNow(passage, request, ActWords.whyNot(act, passage.judge()));
        }
        if (NEED_VOLTS.contains(act) && !board(passage).can(passage.card().channel(), Ability.VOLTS)) {
            return notNow(passage, request, NO_VOLTS);
        }
        Optional<String> inTheWay = watch.loads().inTheWay(passage, act);
        if (inTheWay.isPresent()) {
            return notNow(passage, request, inTheWay.get());
        }
        watch.loads().act(passage, act);
        return done(request, key, passage);
    }

    private DeskAnswer load(OpenPassage passage, Load request, String key) {
        if (!passage.judge().owesLoad()) {
            return notNow(passage, request, OWN_LOAD);
        }
        if (passage.judge().allowed().contains(Act.TAKE_OFF)) {
            return notNow(passage, request, STRING_LOADED);
        }
        BoardWatch board = board(passage);
        int channel = passage.card().channel();
        Optional<String> unfit = ChannelFit.forLoad(board, channel, request.switched());
        if (unfit.isPresent()) {
            return new UnfitChannel(
                    passage.card().board(),
                    channel,
                    unfit.get(),
                    ChannelFit.all(board, each -> ChannelFit.forLoad(board, each, request.switched())));
        }
        return enter(passage, request, key);
    }

    private DeskAnswer move(OpenPassage passage, Move request, String key) {
        if (passage.judge().allowed().contains(Act.TAKE_OFF)) {
            return notNow(passage, request, LOADED);
        }
        BoardWatch board = board(passage);
        String name = passage.card().board();
        boolean bonded = passage.judge().isBonded();
        Optional<String> unfit = ChannelFit.forMove(board, request.channel(), passage, bonded);
        if (unfit.isPresent()) {
            return new UnfitChannel(
                    name,
                    request.channel(),
                    unfit.get(),
                    ChannelFit.all(board, channel -> ChannelFit.forMove(board, channel, passage, bonded)));
        }
        Optional<DeskAnswer> taken = taken(name, request.channel());
        return taken.isPresent() ? taken.get() : enter(passage, request, key);
    }

    private DeskAnswer blink(OpenPassage passage, Blink request, String key) {
        String board = passage.card().board();
        int channel = passage.card().channel();
        if (!board(passage).can(channel, Ability.BLINK)) {
            return new Unable(board, "Channel " + channel + " of board " + board + " has no lamp.");
        }
        if (!control.blink(board, channel, request.seconds())) {
            return new Unable(board, "The board " + board + " is not connected.");
        }
        return done(request, key, passage);
    }

    private DeskAnswer enter(OpenPassage passage, OnPassage request, String key) {
        watch.follow(passage, entry(watch.now(passage), passage, request));
        return done(request, key, passage);
    }

    private static Entry entry(long at, OpenPassage passage, OnPassage request) {
        if (request instanceof Meter meter) {
            return new Entry.Metered(at, meter.volts());
        }
        if (request instanceof Announce announce) {
            return new Entry.Announced(at, at + announce.minutes() * 60_000L, Optional.of(announce.work()));
        }
        if (request instanceof Move move) {
            return new Entry.Moved(at, passage.card().board(), move.channel());
        }
        if (request instanceof Load load) {
            return new Entry.OwnLoad(at, load.ohms(), load.switched());
        }
        throw new IllegalStateException("no entry is made of " + request);
    }

    private DeskAnswer done(DeskRequest request, String key, OpenPassage passage) {
        Receipt receipt = passage.receipt();
        receipts.keep(key, request, receipt, wallMillis.getAsLong());
        watch.settleNow();
        return new Done(receipt, isOnDisk());
    }

    private boolean isOnDisk() {
        return storage.trouble().isEmpty();
    }

    private static DeskAnswer notNow(OpenPassage passage, OnPassage request, String why) {
        return new NotNow(
                passage.judge().phase(), request.name(), passage.judge().allowed(), why);
    }

    private BoardWatch board(OpenPassage passage) {
        return watch.boards().get(passage.card().board());
    }
}
