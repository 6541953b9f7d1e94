package org.ebbwatch.store;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import java.util.zip.CRC32C;

/**
 * The file {@code facts.queue}: batches that wait for a database that is away, oldest first, and whose database that is. It holds
 * all of them in memory too, and grows until the last of them is taken out; a batch that was taken out may come back after a crash.
 *
 * <p>Layout, most significant byte first: eight bytes of magic, the 16 bytes of the database's id, then for each batch its length,
 * the CRC-32C of its bytes (four bytes each), and the bytes. Not thread-safe.
 */
final class FactQueue implements AutoCloseable {
    static final String FILE = "facts.queue";

    private static final String TORN_FILE = "facts.queue.torn";
    private static final byte[] MAGIC = {'E', 'B', 'B', 'F', 'A', 'C', 'T', 1};
    private static final int HEADER_BYTES = MAGIC.length + 2 * Long.BYTES;
    private static final int FRAME_BYTES = 2 * Integer.BYTES;

    private final RandomAccessFile file;
    private final Deque<FactBatch> batches = new ArrayDeque<>();
    private long goodBytes = HEADER_BYTES;
    private long tornBytes;

    private FactQueue(RandomAccessFile file) {
        this.file = file;
    }

    /**
     * Opens the queue in this folder, or begins one. What follows the last whole batch was never promised: it is cut off and kept in
     * {@code facts.queue.torn}.
     *
     * @throws StorageException if what waits is for another database, or another process has it open
     */
    static FactQueue open(Path folder, UUID databaseId) throws IOException {
        Path path = folder.resolve(FILE);
        var file = new RandomAccessFile(path.toFile(), "rw");
        try {
            lock(file, path);
            var queue = new FactQueue(file);
            queue.read(path, databaseId);
            return queue;
        } catch (IOException | StorageException e) {
            file.close();
            throw e;
        }
    }

    private static void lock(RandomAccessFile file, Path path) throws IOException {
        try {
            if (file.getChannel().tryLock() != null) {
                return;
            }
        } catch (OverlappingFileLockException e) {
            throw new StorageException("another service of this process has it open", e);
        }
        throw new StorageException("another process has " + path + " open");
    }

    private void read(Path path, UUID databaseId) throws IOException {
        byte[] bytes = Files.readAllBytes(path);
        byte[] header = header(databaseId);
        if (bytes.length >= HEADER_BYTES && !Arrays.equals(MAGIC, Arrays.copyOf(bytes, MAGIC.length))) {
            throw new StorageException(path + " was not written by this version of the service");
        }
        if (bytes.length > HEADER_BYTES && !Arrays.equals(header, Arrays.copyOf(bytes, HEADER_BYTES))) {
            throw new StorageException("the facts in " + path + " wait for another database than this one");
        }
        ByteBuffer rest = ByteBuffer.wrap(bytes);
        rest.position(Math.min(HEADER_BYTES, bytes.length));
        for (Optional<FactBatch> next = next(rest); next.isPresent(); next = next(rest)) {
            batches.add(next.get());
            goodBytes = rest.position();
        }
        tornBytes = Math.max(0, bytes.length - goodBytes);
        if (tornBytes > 0) {
            Files.copy(path, path.resolveSibling(TORN_FILE), StandardCopyOption.REPLACE_EXISTING);
        }
        file.seek(0);
        file.write(header);
        cutOff();
    }

    private static Optional<FactBatch> next(ByteBuffer rest) {
        if (rest.remaining() < FRAME_BYTES) {
            return Optional.empty();
        }
        int length = rest.getInt();
        int crc = rest.getInt();
        if (length < 0 || length > rest.remaining()) {
            return Optional.empty();
        }
        byte[] payload = new byte[length];
        rest.get(payload);
        try {
            return crc == crc(payload)
                    ? Optional.of(FactBatch.read(new DataInputStream(new ByteArrayInputStream(payload))))
                    : Optional.empty();
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /** How many bytes followed the last whole batch when the queue was opened. */
    long tornBytes() {
        return tornBytes;
    }

    /** Returns when this batch, behind all others, would outlive a power cut; if it throws, it is not in the queue. */
    void add(FactBatch batch) throws IOException {
        var payload = new ByteArrayOutputStream();
        batch.write(new DataOutputStream(payload));
        ByteBuffer frame = ByteBuffer.allocate(FRAME_BYTES + payload.size());
        frame.putInt(payload.size()).putInt(crc(payload.toByteArray())).put(payload.toByteArray());
        try {
            file.seek(goodBytes);
            file.write(frame.array());
            file.getFD().sync();
        } catch (IOException e) {
            cutOffAfter(e);
            throw e;
        }
        goodBytes += frame.capacity();
        batches.add(batch);
    }

    private void cutOffAfter(IOException failure) {
        try {
            cutOff();
        } catch (IOException e) {
            failure.addSuppressed(e);
        }
    }

    private void cutOff() throws IOException {
        file.setLength(goodBytes);
        file.getFD().sync();
    }

    /** All that waits, oldest first. */
    List<FactBatch> batches() {
        return List.copyOf(batches);
    }

    /** The oldest batch. */
    Optional<FactBatch> first() {
        return Optional.ofNullable(batches.peek());
    }

    /** Number of the newest batch. */
    OptionalLong lastNumber() {
        return batches.isEmpty()
                ? OptionalLong.empty()
                : OptionalLong.of(batches.getLast().number());
    }

    int size() {
        return batches.size();
    }

    /** Takes out the oldest batch, which is in the database for certain. */
    void removeFirst() throws IOException {
        batches.remove();
        if (batches.isEmpty()) {
            goodBytes = HEADER_BYTES;
            cutOff();
        }
    }

    @Override
    public void close() throws IOException {
        file.close();
    }

    private static byte[] header(UUID databaseId) {
        return ByteBuffer.allocate(HEADER_BYTES)
                .put(MAGIC)
                .putLong(databaseId.getMostSignificantBits())
                .putLong(databaseId.getLeastSignificantBits())
                .array();
    }

    private static int crc(byte[] payload) {
        var crc = new CRC32C();
        crc.update(payload);
        return (int) crc.getValue();
    }
}
