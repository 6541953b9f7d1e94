package org.ebbwatch.trace;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.ebbwatch.store.StorageException;
import org.ebbwatch.time.LastSeen;

/**
 * The file {@code readings.tail} of a rack: every scan that is not in the database for certain. It only grows, until {@link
 * #replace} writes the scans still needed into a new file and puts that in place of the old one in a single step, so that at
 * every moment one whole tail is there. Scans that are in the database as well may be in it; they are told by their event
 * time. Not thread-safe.
 */
final class Tail implements AutoCloseable {

    private static final String FILE = "readings.tail";
    private static final String NEXT_FILE = "readings.tail.next";

    private final Path directory;
    private final List<TailDamage> damages;
    private final Map<String, LastSeen> seen;
    private TailFile file;
    private final Set<String> unwritten = new HashSet<>();
    private boolean broken;

    private Tail(Path directory, TailFile file, Map<String, LastSeen> seen, List<TailDamage> damages) {
        this.directory = directory;
        this.file = file;
        this.seen = new HashMap<>(seen);
        this.damages = damages;
        this.broken = !damages.isEmpty();
    }

    /** Opens the tail in this directory and hands out every whole scan in it. A damaged tail is broken until replaced. */
    static Tail open(Path directory, ScanSink scans) throws IOException {
        Path path = directory.resolve(FILE);
        Files.deleteIfExists(directory.resolve(NEXT_FILE));
        if (!Files.exists(path)) {
            Tail tail = new Tail(directory, TailFile.begin(directory.resolve(NEXT_FILE)), Map.of(), List.of());
            tail.replace(List.of());
            return tail;
        }
        TailReader read = TailReader.read(path, scans);
        return new Tail(directory, TailFile.resume(path, read), read.seen(), read.damages());
    }

    /** What was no whole scan when the tail was opened. */
    List<TailDamage> damages() {
        return damages;
    }

    /** Whether what is appended now cannot be relied on, so that the tail must be replaced. */
    boolean isBroken() {
        return broken;
    }

    /** Whether all that was taken is on disk. */
    boolean isForced() {
        return !broken && unwritten.isEmpty() && file.isForced();
    }

    long length() {
        return file.length();
    }

    void scan(BoardBoot boot, ScanRow row) throws IOException {
        if (!broken) {
            broken = true;
            file.scan(boot, row);
            broken = false;
        }
    }

    /** Where a board was last seen, as far as it was told or the tail held it when it was opened. */
    Optional<LastSeen> seen(String board) {
        return Optional.ofNullable(seen.get(board));
    }

    /** Where a board was seen just now; written with the next {@link #force}. */
    void seen(String board, LastSeen now) {
        if (!now.equals(seen.put(board, now))) {
            unwritten.add(board);
        }
    }

    /** Returns when every scan taken would outlive a power cut. */
    void force() throws IOException {
        if (broken) {
            throw new IOException("the tail is broken");
        }
        broken = true;
        for (String board : unwritten) {
            file.seen(board, seen.get(board));
        }
        file.force();
        unwritten.clear();
        broken = false;
    }

    /** Copies the tail as far as it was forced. */
    void copy(Path to) throws IOException {
        Files.copy(directory.resolve(FILE), to);
    }

    /** Writes the scans of these blocks into a new tail, forced to disk, and puts it in place of the old one. */
    void replace(Collection<OpenBlock> blocks) throws IOException {
        Path nextPath = directory.resolve(NEXT_FILE);
        TailFile next = TailFile.begin(nextPath);
        try {
            for (OpenBlock block : blocks) {
                block.replay(next);
            }
            for (Map.Entry<String, LastSeen> board : seen.entrySet()) {
                next.seen(board.getKey(), board.getValue());
            }
            next.force();
            Files.move(
                    nextPath,
                    directory.resolve(FILE),
                    StandardCopyOption.ATOMIC_MOVE,
                    StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            next.close();
            throw e;
        }
        unwritten.clear();
        TailFile old = file;
        file = next;
        broken = true;
        old.close();
        forceDirectory();
        broken = false;
    }

    @Override
    public void close() {
        try {
            file.close();
        } catch (IOException e) {
            throw new StorageException("the tail did not close in order", e);
        }
    }

    /** A channel gives up when its thread is interrupted, so an interrupt waits until the directory is safe. */
    private void forceDirectory() throws IOException {
        boolean interrupted = Thread.interrupted();
        try (FileChannel channel = FileChannel.open(directory, StandardOpenOption.READ)) {
            channel.force(true);
        } finally {
            if (interrupted) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
