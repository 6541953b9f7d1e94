package org.ebbwatch.trace;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.ConcurrentHashMap;
import org.ebbwatch.store.Database;
import org.ebbwatch.store.DurableReadings;
import org.ebbwatch.store.StorageException;
import org.ebbwatch.time.LastSeen;
import org.ebbwatch.trace.codec.Sha256;

/**
 * Keeps what every channel of a rack read.
 *
 * <p>A scan goes into memory and to the end of the tail, a local file forced to disk by {@link #flush} or, some 1.5 s after
 * the first {@link #tick} that finds it there, by a tick: a disk that wears with every write is left alone in between. When ten minutes of a board are there, or 4096 scans, each of its channels becomes a
 * segment, all of them go into the database in one transaction, and sooner or later the tail is replaced by one without them.
 * A crash between any two of these steps neither loses nor doubles a scan: event time strictly rises on every board, so a
 * scan in the tail is in the database exactly if it is not newer than the board's newest segment.
 *
 * <p>A storage that fails never stops the watch: {@link #append} does not throw for it. With the database away, segments wait
 * in memory and their scans stay in the tail; with the tail failing too, only memory is left. {@link #health} tells, and every
 * tick tries again.
 *
 * <p>Reading may be done by any thread; everything else by one thread.
 */
public final class TraceStore implements DurableReadings, AutoCloseable {

    private static final long FLUSH_AFTER_NANOS = 1_500_000_000L;
    private static final long LONG_TAIL_BYTES = 4L << 20;
    private static final int MOST_SAVED_AT_ONCE = 256;

    Tail tail;
    private final SegmentTable table;
    private final TraceReader reader;
    private final Map<String, Trail> trails = new ConcurrentHashMap<>();
    private final Map<Sha256, BoardBoot> boots = new ConcurrentHashMap<>();
    private final List<SealedSegment> waiting = new ArrayList<>();
    private final Object lock = new Object();
    private long scansTaken;
    private long scansSealedBefore;
    private boolean tailHeld;
    private long keptBytes;
    private boolean unsafe;
    private long unsafeSinceNanos;
    private volatile long tailBytes;
    private volatile String tailTrouble;
    private volatile String databaseTrouble;

    private TraceStore(SegmentTable table) {
        this.table = table;
        this.reader = new TraceReader(table);
    }

    /**
     * Opens the trace: takes up what the tail holds and seals what is due.
     *
     * @param directory where the tail lies; it must exist
     * @throws StorageException if the tail or the database cannot be read or written
     */
    public static TraceStore open(Database database, Path directory) {
        TraceStore store = new TraceStore(new SegmentTable(database));
        try {
            store.tail = Tail.open(directory, store::recover);
            store.saveWaiting();
            if (store.databaseTrouble != null) {
                throw new StorageException("the trace cannot be sealed: " + store.databaseTrouble);
            }
            store.flush();
        } catch (IOException e) {
            throw new StorageException("the tail cannot be opened", e);
        }
        return store;
    }

    /** What was found in the tail when the trace was opened. */
    public TailRecovery recovery() {
        return new TailRecovery(scansTaken, scansSealedBefore, tail.damages());
    }

    /**
     * A board may say who it is, perhaps while the database is away: what is known of it is looked up now.
     *
     * @throws StorageException if it cannot be
     */
    public void expect(String board) {
        trail(board);
    }

    /** A board said who it is; must come before its first scan, and again when anything of it changed. */
    public void identified(BoardBoot boot) {
        boots.putIfAbsent(boot.identityHash(), boot);
        trail(boot.board()).identified(boot);
    }

    /**
     * Takes one scan of a board.
     *
     * @throws IllegalStateException if the board was never identified
     * @throws IllegalArgumentException if event time did not rise, or there are amperes where the board said there are none
     */
    public void append(String board, ScanRow row) {
        Trail trail = trails.get(board);
        if (trail == null || trail.boot().isEmpty()) {
            throw new IllegalStateException("board " + board + " has not said who it is");
        }
        trail.check(row);
        BoardBoot boot = trail.bootOf(row.bootNumber());
        if (!trail.block.takes(boot, row)) {
            seal(trail);
            clearUp();
        }
        try {
            tail.scan(boot, row);
        } catch (IOException e) {
            tailTrouble = e.getMessage();
        }
        tailBytes = tail.length();
        synchronized (lock) {
            trail.append(boot, row);
        }
    }

    /** Where a board was seen just now; outlives a power cut with the next {@link #flush}. */
    public void seen(String board, LastSeen now) {
        tail.seen(board, now);
    }

    /**
     * Where a board was last seen before or in this run. It may lag behind {@link #lastScan}; empty for a new board and where
     * the tail was lost.
     */
    public Optional<LastSeen> lastSeen(String board) {
        return tail.seen(board);
    }

    /** Returns when every scan taken so far would outlive a power cut. */
    @Override
    public void flush() {
        try {
            if (!tail.isBroken()) {
                tail.force();
                tailTrouble = null;
                return;
            }
        } catch (IOException e) {
            tailTrouble = e.getMessage();
        }
        saveWaiting();
        clearUp();
        if (tail.isBroken()) {
            tailTrouble = tailTrouble == null ? "the tail is damaged" : tailTrouble;
            throw new StorageException("the newest readings are not safe on disk: " + tailTrouble);
        }
    }

    /** To be called several times a second with the host's monotonic clock; flushes and tries again where it is time. */
    public void tick(long hostNanos) {
        boolean was = unsafe;
        unsafe = !tail.isForced() || !waiting.isEmpty();
        if (!unsafe || !was) {
            unsafeSinceNanos = hostNanos;
        }
        if (hostNanos - unsafeSinceNanos < FLUSH_AFTER_NANOS) {
            return;
        }
        unsafe = false;
        saveWaiting();
        try {
            flush();
        } catch (StorageException told) {
            // By health, and the next tick tries again.
        }
    }

    /**
     * Seals everything now, however little it is.
     *
     * @throws StorageException if the database does not take it
     */
    public void sealAll() {
        for (Trail trail : trails.values()) {
            if (!trail.block.isEmpty()) {
                seal(trail);
            }
        }
        while (!waiting.isEmpty() && databaseTrouble == null) {
            saveWaiting();
        }
        if (databaseTrouble != null) {
            throw new StorageException("the trace cannot be sealed: " + databaseTrouble);
        }
        flush();
    }

    /** Until {@link #copyTail} no scan leaves the tail, unless it breaks. */
    public void holdTail() {
        tailHeld = true;
    }

    /**
     * Copies the tail, with every scan since {@link #holdTail} in it, and holds it no longer.
     *
     * @throws IOException if it cannot be copied, or broke meanwhile and was replaced
     */
    public void copyTail(Path to) throws IOException {
        flush();
        if (!tailHeld) {
            throw new IOException("the file of the newest readings had to be replaced meanwhile; back up again");
        }
        tailHeld = false;
        tail.copy(to);
    }

    /** How well the trace is kept; any thread. */
    public TraceHealth health() {
        synchronized (lock) {
            return new TraceHealth(
                    Optional.ofNullable(tailTrouble), Optional.ofNullable(databaseTrouble), tailBytes, waiting.size());
        }
    }

    /**
     * Shows what a channel read within [from, to) of event time, in order; any thread.
     *
     * @throws StorageException if the database cannot be read
     */
    public void read(String board, int channel, long fromEventMillis, long toEventMillis, SampleVisitor visitor) {
        TraceReader.Unsealed unsealed = unsealed(board, channel, fromEventMillis, toEventMillis);
        reader.read(board, channel, fromEventMillis, toEventMillis, unsealed, visitor);
    }

    /** Walks along all segments of a channel and checks that each follows from the one before it; any thread. */
    public ChainReport verifyChain(String board, int channel) {
        return reader.verifyChain(board, channel, unsealed(board, channel, 0, 0));
    }

    /** The links of all sealed segments of a channel that hold some of [from, to), oldest first; any thread. */
    public List<SegmentLink> links(String board, int channel, long fromEventMillis, long toEventMillis) {
        return reader.links(board, channel, fromEventMillis, toEventMillis, unsealed(board, channel, 0, 0));
    }

    /** The newest scan of a board, over restarts; any thread. */
    public Optional<LastScan> lastScan(String board) {
        Trail trail = trails.get(board);
        synchronized (lock) {
            if (trail != null) {
                return trail.last();
            }
        }
        return lookUp(() -> table.lastScan(board));
    }

    /** Event time of the newest scan of a board, over restarts; any thread. */
    public OptionalLong lastEventMillis(String board) {
        return lastScan(board).map(last -> OptionalLong.of(last.eventMillis())).orElseGet(OptionalLong::empty);
    }

    /** What a board said of itself, by the hash a stretch names it by; any thread. */
    public Optional<BoardBoot> boot(Sha256 identityHash) {
        BoardBoot seen = boots.get(identityHash);
        if (seen != null) {
            return Optional.of(seen);
        }
        return lookUp(() -> table.boot(identityHash));
    }

    /** What a board said of itself at each of its starts that has a segment, oldest first; any thread. */
    public List<BoardBoot> boots(String board) {
        return lookUp(() -> table.boots(board));
    }

    /** Makes the scans durable and lets go of the tail; scans that are not sealed yet are taken up at the next opening. */
    @Override
    public void close() {
        try {
            flush();
        } finally {
            tail.close();
        }
    }

    private Trail trail(String board) {
        Trail trail = trails.get(board);
        if (trail == null) {
            trail = lookUp(() -> new Trail(board, table.lastHashes(board), table.lastScan(board)));
            trails.put(board, trail);
        }
        return trail;
    }

    /** Takes up a scan that the tail held when it was opened. */
    private void recover(BoardBoot boot, ScanRow row) {
        identified(boot);
        Trail trail = trail(boot.board());
        if (!trail.isAfterLast(row.eventMillis())) {
            scansSealedBefore++;
            return;
        }
        scansTaken++;
        BoardBoot known = trail.bootOf(row.bootNumber());
        if (!trail.block.takes(known, row)) {
            seal(trail);
        }
        trail.append(known, row);
    }

    private void seal(Trail trail) {
        List<SealedSegment> sealed = trail.seal();
        synchronized (lock) {
            waiting.addAll(sealed);
            trail.block.clear();
        }
        saveWaiting();
    }

    private void saveWaiting() {
        if (waiting.isEmpty()) {
            return;
        }
        List<SealedSegment> next = nextToSave();
        try {
            table.insert(next);
            databaseTrouble = null;
            synchronized (lock) {
                next.clear();
            }
        } catch (SQLException e) {
            databaseTrouble = e.getMessage();
        }
    }

    /** Not too many at once, for somebody waits; and whole blocks, for a scan is in the database with all its channels or none. */
    private List<SealedSegment> nextToSave() {
        int end = Math.min(waiting.size(), MOST_SAVED_AT_ONCE);
        while (end < waiting.size() && waiting.get(end).isOfBlock(waiting.get(end - 1))) {
            end++;
        }
        return waiting.subList(0, end);
    }

    /**
     * Puts a short tail in place of a long or broken one, once all that leaves it is safe in the database. Long is what has grown to
     * twice what had to be kept the last time, and more, so that no scan is written again and again however many boards there are.
     */
    private void clearUp() {
        boolean due = tail.isBroken() || tail.length() > LONG_TAIL_BYTES + 2 * keptBytes;
        boolean kept = tailHeld && !tail.isBroken();
        if (!due || kept || !waiting.isEmpty()) {
            return;
        }
        tailHeld = false;
        try {
            table.force();
            databaseTrouble = null;
        } catch (SQLException e) {
            databaseTrouble = e.getMessage();
            return;
        }
        try {
            tail.replace(trails.values().stream().map(trail -> trail.block).toList());
            keptBytes = tail.length();
            tailTrouble = null;
        } catch (IOException e) {
            tailTrouble = e.getMessage();
        }
        tailBytes = tail.length();
    }

    private TraceReader.Unsealed unsealed(String board, int channel, long fromEventMillis, long toEventMillis) {
        Trail trail = trails.get(board);
        if (trail == null) {
            return new TraceReader.Unsealed(List.of(), null, null, Long.MAX_VALUE);
        }
        synchronized (lock) {
            return trail.unsealed(waiting, channel, fromEventMillis, toEventMillis);
        }
    }

    private static <T> T lookUp(LookUp<T> lookUp) {
        try {
            return lookUp.get();
        } catch (SQLException e) {
            throw new StorageException("the trace cannot be read", e);
        }
    }

    @FunctionalInterface
    private interface LookUp<T> {
        T get() throws SQLException;
    }
}
