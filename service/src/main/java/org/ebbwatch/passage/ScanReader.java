package org.ebbwatch.passage;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.store.StorageException;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.WallQuality;
import org.ebbwatch.trace.SampleVisitor;
import org.ebbwatch.trace.Stretch;
import org.ebbwatch.trace.TraceStore;
import org.ebbwatch.trace.codec.Sha256;

/**
 * Reads a passage's calibrated readings back from the trace: its own channel joined with the board's ambient, dummy and bank
 * channels of the same scan, an hour at a time.
 */
final class ScanReader {
    private static final long WINDOW_MILLIS = 3_600_000;
    private static final HostTime NO_TIME = new HostTime("", 0, 0, WallQuality.UNSYNCHRONISED);

    private final PassageCard card;
    private final TraceStore trace;
    private final Map<Sha256, BoardWatch> boards = new HashMap<>();
    private final Map<Sha256, Identity> identities = new HashMap<>();

    ScanReader(PassageCard card, TraceStore trace) {
        this.card = card;
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
        Stretch told = null;
        for (long begin = fromMillis; begin < toMillis; begin += WINDOW_MILLIS) {
            long from = begin;
            long to = Math.min(toMillis, from + WINDOW_MILLIS);
            Column own = column(card.channel(), from, to);
            Map<Integer, Column> others = new HashMap<>();
            for (int row = 0; row < own.millis.size(); row++) {
                Stretch stretch = own.stretches.get(row);
                BoardWatch board = board(stretch);
                if (!stretch.equals(told)) {
                    told = stretch;
                    boardTaker.accept(heard(stretch));
                }
                for (int channel : board.roleChannels()) {
                    others.computeIfAbsent(channel, other -> column(other, from, to));
                }
                if (!taker.test(scan(board, own, others, row))) {
                    return;
                }
            }
        }
    }

    private HeardBoard heard(Stretch stretch) {
        return new HeardBoard(
                card.board(),
                stretch.bootNumber(),
                identities.get(stretch.identityHash()),
                stretch.identityHash().toString());
    }

    private Entry.Scan scan(BoardWatch board, Column own, Map<Integer, Column> others, int row) {
        long millis = own.millis.get(row);
        Stretch stretch = own.stretches.get(row);
        var scan = new BoardScan(board.channels());
        scan.stamp(stretch.bootNumber(), 0, millis, 0, stretch.kinds().hasAmperes(), NO_TIME);
        scan.channel(
                card.channel(),
                own.counts.get(row)[0],
                own.counts.get(row)[1],
                own.counts.get(row)[2],
                own.counts.get(row)[3]);
        for (int channel : board.roleChannels()) {
            Column other = others.get(channel);
            if (row >= other.millis.size() || other.millis.get(row) != millis) {
                throw new StorageException("the trace of board " + card.board() + " holds channel " + card.channel()
                        + " but not channel " + channel + " at event time " + millis);
            }
            int[] counts = other.counts.get(row);
            scan.channel(channel, counts[0], counts[1], counts[2], counts[3]);
        }
        board.heard(scan);
        return board.reading(card.channel());
    }

    private BoardWatch board(Stretch stretch) {
        return boards.computeIfAbsent(stretch.identityHash(), hash -> {
            Identity identity = trace.boot(hash)
                    .map(boot -> IdentityText.read(boot.identity()))
                    .orElseThrow(() -> new StorageException("what board " + card.board() + " said of itself is lost"));
            identities.put(hash, identity);
            var board = new BoardWatch(card.board());
            board.identified(identity);
            return board;
        });
    }

    private Column column(int channel, long from, long to) {
        var column = new Column();
        trace.read(card.board(), channel, from, to, column);
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
