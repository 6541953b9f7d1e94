package org.ebbwatch.passage;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.store.StorageException;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.LastSeen;
import org.ebbwatch.time.WallQuality;
import org.ebbwatch.trace.SampleVisitor;
import org.ebbwatch.trace.Stretch;
import org.ebbwatch.trace.TraceStore;
import org.ebbwatch.trace.codec.Sha256;

/**
 * Reads a passage's calibrated readings back from the trace: the channel it was on at the time, joined with the board's ambient,
 * dummy and bank channels of the same scan, an hour at a time.
 */
final class ScanReader {
    private static final long WINDOW_MILLIS = 3_600_000;
    private static final HostTime NO_TIME = new HostTime("", 0, 0, WallQuality.UNSYNCHRONISED);

    private final String boardName;
    private final List<OnChannel> stays;
    private final TraceStore trace;
    private final Map<Sha256, BoardWatch> boards = new HashMap<>();
    private final Map<Sha256, BoardBasis> bases = new HashMap<>();

    /**
     * A reader of one passage.
     *
     * @param stays where the passage was, in order
     */
    ScanReader(String board, List<OnChannel> stays, TraceStore trace) {
        this.boardName = board;
        this.stays = stays;
        this.trace = trace;
    }

    /** Gives every scan in [from, to) to {@code taker}, in order. */
    void read(long fromMillis, long toMillis, Consumer<Entry.Scan> taker) {
        readWhile(fromMillis, toMillis, board -> {}, scan -> {
            taker.accept(scan);
            return true;
        });
    }

    /**
     * Gives scans in [from, to) to {@code taker}, in order, until it wants no more; before the first one, and wherever it
     * changes, what the board said of itself to {@code boards}.
     */
    void readWhile(long fromMillis, long toMillis, Consumer<HeardBoard> boardTaker, Predicate<Entry.Scan> taker) {
        for (int i = 0; i < stays.size(); i++) {
            OnChannel stay = stays.get(i);
            long from = Math.max(fromMillis, stays.get(i).fromMillis());
            long to = i + 1 < stays.size() ? Math.min(toMillis, stays.get(i + 1).fromMillis()) : toMillis;
            if (!readWhile(stay, from, to, boardTaker, taker)) {
                return;
            }
        }
    }

    private boolean readWhile(
            OnChannel stay,
            long fromMillis,
            long toMillis,
            Consumer<HeardBoard> boardTaker,
            Predicate<Entry.Scan> taker) {
        int channel = stay.channel();
        Stretch told = null;
        Set<Integer> needed = Set.of();
        for (long begin = fromMillis; begin < toMillis; begin += WINDOW_MILLIS) {
            long from = begin;
            long to = Math.min(toMillis, from + WINDOW_MILLIS);
            Column own = column(channel, from, to);
            Map<Integer, Column> others = new HashMap<>();
            for (int row = 0; row < own.millis.size(); row++) {
                Stretch stretch = own.stretches.get(row);
                BoardWatch board = board(stretch);
                if (!stretch.equals(told)) {
                    told = stretch;
                    needed = needed(board, stay);
                    boardTaker.accept(heard(stretch, channel));
                }
                for (int each : needed) {
                    others.computeIfAbsent(each, other -> column(other, from, to));
                }
                if (!taker.test(scan(board, stay, own, others, needed, row))) {
                    return false;
                }
            }
        }
        return true;
    }

    private HeardBoard heard(Stretch stretch, int channel) {
        return new HeardBoard(
                boardName,
                channel,
                stretch.bootNumber(),
                bases.get(stretch.identityHash()),
                stretch.identityHash().toString());
    }

    /** Channels without which its reading cannot be told. */
    private static Set<Integer> needed(BoardWatch board, OnChannel stay) {
        Set<Integer> needed = new TreeSet<>(board.drawnOn(stay.channel()));
        stay.string().ifPresent(string -> {
            for (int mate = string.firstChannel(); mate <= string.lastChannel(); mate++) {
                needed.add(mate);
            }
        });
        needed.remove(stay.channel());
        return needed;
    }

    private Entry.Scan scan(
            BoardWatch board, OnChannel stay, Column own, Map<Integer, Column> others, Set<Integer> needed, int row) {
        int number = stay.channel();
        long millis = own.millis.get(row);
        Stretch stretch = own.stretches.get(row);
        var scan = new BoardScan(board.channels());
        var seen = new LastSeen(millis, stretch.bootNumber(), 0, 0, NO_TIME);
        scan.stamp(seen, 0, stretch.kinds().hasAmperes());
        scan.channel(
                number,
                own.counts.get(row)[0],
                own.counts.get(row)[1],
                own.counts.get(row)[2],
                own.counts.get(row)[3]);
        for (int channel : needed) {
            Column other = others.get(channel);
            if (row >= other.millis.size() || other.millis.get(row) != millis) {
                throw new StorageException("the trace of board " + boardName + " holds channel " + number
                        + " but not channel " + channel + " at event time " + millis);
            }
            int[] counts = other.counts.get(row);
            scan.channel(channel, counts[0], counts[1], counts[2], counts[3]);
        }
        board.heard(scan);
        return board.reading(number, stay.string());
    }

    private BoardWatch board(Stretch stretch) {
        return boards.computeIfAbsent(stretch.identityHash(), hash -> {
            BoardBasis basis = trace.boot(hash)
                    .map(boot -> BasisText.read(boot.identity()))
                    .orElseThrow(() -> new StorageException("what board " + boardName + " said of itself is lost"));
            bases.put(hash, basis);
            var board = new BoardWatch(boardName);
            board.rest(basis);
            return board;
        });
    }

    private Column column(int channel, long from, long to) {
        var column = new Column();
        trace.read(boardName, channel, from, to, column);
        return column;
    }

    /** One channel's samples of a window: state, volts, celsius, amperes. */
    private static final class Column implements SampleVisitor {
        private final List<Long> millis = new ArrayList<>();
        private final List<int[]> counts = new ArrayList<>();
        private final List<Stretch> stretches = new ArrayList<>();
        private Stretch current;

        @Override
        public void stretch(Stretch stretch) {
            current = stretch;
        }

        @Override
        public void sample(long scan, long eventMillis, int state, int volts, int celsius, int amperes) {
            millis.add(eventMillis);
            counts.add(new int[] {state, volts, celsius, amperes});
            stretches.add(current);
        }
    }
}
