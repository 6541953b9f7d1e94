package org.ebbwatch.rack;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import org.ebbwatch.acquire.BoardAgent;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.acquire.RackLock;
import org.ebbwatch.acquire.SerialNumbers;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Outcome.Event;
import org.ebbwatch.passage.BoardBasis;
import org.ebbwatch.passage.BoardControl;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.PassageLog;
import org.ebbwatch.passage.RackView.BoardView;
import org.ebbwatch.passage.RackWatch;
import org.ebbwatch.passage.TraceLog;
import org.ebbwatch.rack.RunningRack.BoardPort;
import org.ebbwatch.time.EventClock;

/**
 * Reads every channel of every board of a rack file once. Boards are asked who they are and nothing else: no load is closed, none is
 * opened, no record is kept.
 */
public final class RackCheck {
    private static final long LOOK_MILLIS = 50;

    private final RackFile file;
    private final List<BoardPort> ports;
    private final HostClock clock;
    private final RackLock lock = new RackLock();
    private final RackWatch watch = new RackWatch(new Nowhere(), new Nowhere(), new Idle(), UUID::randomUUID);

    /** @param ports where the boards of the file are reached */
    public RackCheck(RackFile file, List<BoardPort> ports, HostClock clock) {
        this.file = file;
        this.ports = List.copyOf(ports);
        this.clock = clock;
    }

    /** The lines of all boards, in the order of the rack file; waits so long for boards that are not heard. */
    public List<ChannelLine> read(long mostMillis) throws InterruptedException {
        List<BoardAgent> agents = new ArrayList<>();
        var serialNumbers = new SerialNumbers();
        for (BoardPort board : ports) {
            watch.expect(board.name(), board.contacts());
            agents.add(new BoardAgent(
                    board.name(),
                    board.expectedSerialNumber(),
                    serialNumbers,
                    board.ports(),
                    EventClock.fresh(),
                    watch,
                    lock,
                    clock));
        }
        file.wirings().forEach(watch::wire);
        try {
            agents.forEach(BoardAgent::start);
            for (long waited = 0; waited < mostMillis && !allHeard(); waited += LOOK_MILLIS) {
                TimeUnit.MILLISECONDS.sleep(LOOK_MILLIS);
            }
            return lock.call(this::lines);
        } finally {
            agents.forEach(BoardAgent::close);
        }
    }

    private boolean allHeard() {
        return lock.call(() -> watch.view().boards().stream().allMatch(board -> board.eventMillis() >= 0));
    }

    private List<ChannelLine> lines() {
        List<ChannelLine> lines = new ArrayList<>();
        for (BoardView board : watch.view().boards()) {
            if (board.eventMillis() < 0) {
                lines.add(ChannelLine.trouble(
                        board.name(), "not heard", board.detail().isEmpty() ? "See to its port." : board.detail()));
                continue;
            }
            BoardBasis basis = watch.basis(board.name()).orElseThrow();
            List<CellEntry> cells = file.cells().stream()
                    .filter(cell -> cell.board().equals(board.name()))
                    .toList();
            lines.addAll(ChannelCheck.lines(board.name(), basis, watch.readings(board.name()), cells));
        }
        watch.view()
                .unwatched()
                .forEach(line ->
                        lines.add(ChannelLine.trouble("rack file", line, "Correct the rack file or the wiring.")));
        return lines;
    }

    /** Keeps nothing. */
    private static final class Nowhere implements TraceLog, PassageLog {
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

    /** Asks nothing of a board. */
    private static final class Idle implements BoardControl {
        @Override
        public void setLoad(String board, int channel, boolean closed) {}

        @Override
        public void openAllLoads(String board) {}

        @Override
        public boolean checkLead(String board, int channel) {
            return false;
        }

        @Override
        public boolean blink(String board, int channel, int seconds) {
            return false;
        }
    }
}
