package org.ebbwatch.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.trace.codec.Sha256;

/** What the trace knows of one board: who it is, its open scans, and where each channel's chain of segments ends. */
final class Trail {

    final OpenBlock block = new OpenBlock();
    private final String board;
    private final Map<Integer, Sha256> lastHashes;
    private BoardBoot boot;
    private boolean hasLast;
    private long lastBootNumber;
    private long lastScan;
    private long lastEventMillis;

    Trail(String board, Map<Integer, Sha256> lastHashes, Optional<LastScan> last) {
        this.board = board;
        this.lastHashes = lastHashes;
        last.ifPresent(known -> keepLast(known.bootNumber(), known.scan(), known.eventMillis()));
    }

    Optional<BoardBoot> boot() {
        return Optional.ofNullable(boot);
    }

    Optional<LastScan> last() {
        return hasLast ? Optional.of(new LastScan(lastBootNumber, lastScan, lastEventMillis)) : Optional.empty();
    }

    void identified(BoardBoot now) {
        if (!now.equals(boot)) {
            boot = now;
        }
    }

    /** The board's identity under the boot number of a scan; a board that started again is still the same board. */
    BoardBoot bootOf(long bootNumber) {
        if (boot.bootNumber() != bootNumber) {
            boot = boot.after(bootNumber);
        }
        return boot;
    }

    boolean isAfterLast(long eventMillis) {
        return !hasLast || eventMillis > lastEventMillis;
    }

    void append(BoardBoot itsBoot, ScanRow row) {
        block.append(itsBoot, row);
        keepLast(itsBoot.bootNumber(), row.scan(), row.eventMillis());
    }

    /** Refuses what the trace cannot keep in order. */
    void check(ScanRow row) {
        if (row.channels() < 1 || row.channels() > 255) {
            throw new IllegalArgumentException("a scan has 1 to 255 channels, not " + row.channels());
        }
        if (row.amperes() != null && !boot.kinds().hasAmperes()) {
            throw new IllegalArgumentException("board " + board + " said that it has no amperes");
        }
        if (!isAfterLast(row.eventMillis())) {
            throw new IllegalArgumentException(
                    "event time of " + board + " went from " + lastEventMillis + " to " + row.eventMillis());
        }
    }

    /** What of a channel is not in the database for certain; open scans are copied, those within [from, to) only. */
    TraceReader.Unsealed unsealed(List<SealedSegment> waiting, int channel, long fromEventMillis, long toEventMillis) {
        long begins = block.isEmpty() ? Long.MAX_VALUE : block.firstEventMillis();
        List<SealedSegment> itsWaiting = new ArrayList<>();
        for (SealedSegment segment : waiting) {
            if (segment.key().board().equals(board) && segment.key().channel() == channel) {
                itsWaiting.add(segment);
                begins = Math.min(begins, segment.key().firstEventMillis());
            }
        }
        if (block.isEmpty()) {
            return new TraceReader.Unsealed(itsWaiting, null, null, begins);
        }
        Stretch stretch = new Stretch(
                block.boot().bootNumber(), block.kinds(), block.boot().identityHash());
        return new TraceReader.Unsealed(
                itsWaiting, block.copy(channel, fromEventMillis, toEventMillis), stretch, begins);
    }

    /** Encodes every channel of the block; the chain goes on from the new segments. */
    List<SealedSegment> seal() {
        List<SealedSegment> sealed = new ArrayList<>(block.channels());
        for (int channel = 0; channel < block.channels(); channel++) {
            SealedSegment segment = SealedSegment.of(block, channel, lastHashes.getOrDefault(channel, Sha256.NONE));
            lastHashes.put(channel, segment.hash());
            sealed.add(segment);
        }
        return sealed;
    }

    private void keepLast(long bootNumber, long scan, long eventMillis) {
        hasLast = true;
        lastBootNumber = bootNumber;
        lastScan = scan;
        lastEventMillis = eventMillis;
    }
}
