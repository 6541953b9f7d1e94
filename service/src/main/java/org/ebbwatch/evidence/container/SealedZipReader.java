package org.ebbwatch.evidence.container;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.ebbwatch.trace.codec.Sha256;

/**
 * Reads a container and believes nothing of it: the headers must be, byte for byte, those a writer makes; parts follow each
 * other without a gap from the first byte to the directory; names are plain; everything unpacked stays below 4 GiB. So there
 * is one way only to read a bundle, for this and for any other program. Holds no part in memory. For one thread.
 */
public final class SealedZipReader implements AutoCloseable {
    private final FileChannel file;
    private final Seal seal;
    private final Map<String, PartHeader> headers = new LinkedHashMap<>();

    private SealedZipReader(FileChannel file, Seal seal) {
        this.file = file;
        this.seal = seal;
    }

    /**
     * Opens a bundle and reads its directory.
     *
     * @throws NoBundleException if the file is none, or of another version of the format
     * @throws DamageException if it is one that was damaged, shortened or put together otherwise
     * @throws IOException if the file cannot be read
     */
    public static SealedZipReader open(Path path) throws IOException {
        FileChannel file = FileChannel.open(path);
        try {
            var reader = new SealedZipReader(file, seal(file));
            reader.readDirectory();
            return reader;
        } catch (IOException e) {
            file.close();
            throw e;
        }
    }

    /** Version of the bundle's format, 1 or 2. */
    public int version() {
        return seal.version();
    }

    /** The parts' names in their order. */
    public Set<String> paths() {
        return headers.keySet();
    }

    /** Length of a part, unpacked, as the container has it; {@link #part} holds the part to it. */
    public long bytes(String path) {
        return headers.get(path).bytes();
    }

    /** Length of the whole container. */
    public long bytes() throws IOException {
        return file.size();
    }

    /** A part, unpacked; reading throws {@link DamageException} where it is not what the container says of it. */
    public InputStream part(String path) {
        PartHeader header = headers.get(path);
        long begin = header.end() - header.packedBytes();
        return new PartInput(header, new Slice(begin, header.end()));
    }

    /**
     * Length and digest of a part, unpacked.
     *
     * @throws DamageException if it is not what the container says of it
     */
    public Part digest(String path) throws IOException {
        MessageDigest digest = Seal.sha256();
        byte[] buffer = new byte[1 << 16];
        try (InputStream in = part(path)) {
            for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
                digest.update(buffer, 0, read);
            }
        }
        return new Part(path, bytes(path), Sha256.wrap(digest.digest()));
    }

    /**
     * Holds every byte against the seal.
     *
     * @throws DamageException if it does not fit
     */
    public void checkSeal() throws IOException {
        if (!isSealed(file, seal)) {
            throw new DamageException(DamageException.CONTAINER, "its bytes do not fit the seal at its end");
        }
    }

    private static Seal seal(FileChannel file) throws IOException {
        long size = file.size();
        boolean begins = size >= 4 && PartHeader.littleEndian(read(file, 0, 4)).getInt() == PartHeader.LOCAL_MARK;
        Optional<Seal> seal = size < PartHeader.END_BYTES + Seal.BYTES
                ? Optional.empty()
                : Seal.read(read(file, size - Seal.BYTES, Seal.BYTES));
        if (seal.isEmpty()) {
            throw withoutSeal(file, begins);
        }
        if (seal.get().version() > Seal.VERSION) {
            if (!isSealed(file, seal.get())) {
                throw new DamageException(DamageException.CONTAINER, "its bytes do not fit the seal at its end");
            }
            throw new NoBundleException("it is of version " + seal.get().version()
                    + " of the bundle's format; this program reads versions 1 to " + Seal.VERSION);
        }
        return seal.get();
    }

    private static IOException withoutSeal(FileChannel file, boolean begins) throws IOException {
        if (!begins) {
            return new NoBundleException("it is no bundle");
        }
        long end = file.size() - PartHeader.END_BYTES;
        if (end >= 0 && PartHeader.littleEndian(read(file, end, 4)).getInt() == PartHeader.END_MARK) {
            return new NoBundleException(
                    "it is an ordinary ZIP, not a bundle; a bundle that was unpacked and packed again has lost its seal");
        }
        return new DamageException(
                DamageException.CONTAINER, "it does not end with a seal: it was shortened or changed at its end");
    }

    private static boolean isSealed(FileChannel file, Seal seal) throws IOException {
        return Seal.digest(file, file.size() - Seal.DIGITS).toString().equals(seal.digest());
    }

    private void readDirectory() throws IOException {
        long end = file.size() - Seal.BYTES - PartHeader.END_BYTES;
        byte[] bytes = read(file, end, PartHeader.END_BYTES);
        ByteBuffer record = PartHeader.littleEndian(bytes);
        int parts = record.getShort(10);
        long directoryBytes = Integer.toUnsignedLong(record.getInt(12));
        long at = Integer.toUnsignedLong(record.getInt(16));
        require(
                Arrays.equals(bytes, PartHeader.end(parts, directoryBytes, at, Seal.BYTES))
                        && parts > 0
                        && parts <= PartHeader.PARTS_MOST
                        && at + directoryBytes == end,
                "its directory is not where and what it should be");
        long expectedOffset = 0;
        long unpackedBytes = 0;
        for (int i = 0; i < parts; i++) {
            PartHeader header = readHeader(at, end);
            require(headers.put(header.name(), header) == null, "it holds " + header.name() + " twice");
            require(header.offset() == expectedOffset, "there is something between its parts");
            require(header.end() <= end, "the part " + header.name() + " reaches beyond the parts");
            byte[] local = read(
                    file,
                    header.offset(),
                    PartHeader.LOCAL_BYTES + header.name().length());
            require(
                    Arrays.equals(local, header.local()),
                    "it says one thing of " + header.name() + " before it and another in the directory");
            expectedOffset = header.end();
            unpackedBytes += header.bytes();
            at += header.central().length;
        }
        require(unpackedBytes <= PartHeader.MOST_BYTES, "unpacked it would be 4 GiB or more");
        require(at == end, "its directory has more in it than parts");
        require(expectedOffset == end - directoryBytes, "there is something between its parts and the directory");
    }

    private PartHeader readHeader(long at, long end) throws IOException {
        require(at + PartHeader.CENTRAL_BYTES <= end, "its directory is cut short");
        ByteBuffer fixed = PartHeader.littleEndian(read(file, at, PartHeader.CENTRAL_BYTES));
        int nameBytes = Short.toUnsignedInt(fixed.getShort(28));
        require(
                nameBytes <= PartHeader.NAME_MOST && at + PartHeader.CENTRAL_BYTES + nameBytes <= end,
                "a name in it is too long");
        byte[] whole = read(file, at, PartHeader.CENTRAL_BYTES + nameBytes);
        String name = new String(whole, PartHeader.CENTRAL_BYTES, nameBytes, StandardCharsets.ISO_8859_1);
        require(PartHeader.isName(name), "a name in it is not one a part may have");
        PartHeader header = PartHeader.read(fixed, name);
        require(Arrays.equals(whole, header.central()), "its directory says of " + name + " what no bundle says");
        return header;
    }

    private static void require(boolean holds, String otherwise) throws DamageException {
        if (!holds) {
            throw new DamageException(DamageException.CONTAINER, otherwise);
        }
    }

    private static byte[] read(FileChannel file, long at, int length) throws IOException {
        byte[] bytes = new byte[length];
        ByteBuffer buffer = ByteBuffer.wrap(bytes);
        while (buffer.hasRemaining()) {
            if (file.read(buffer, at + buffer.position()) < 0) {
                throw new EOFException("the file became shorter while it was read");
            }
        }
        return bytes;
    }

    @Override
    public void close() throws IOException {
        file.close();
    }

    /** Some bytes of the file. */
    private final class Slice extends InputStream {
        private long at;
        private final long end;

        Slice(long begin, long end) {
            this.at = begin;
            this.end = end;
        }

        @Override
        public int read() throws IOException {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
        }

        @Override
        public int read(byte[] into, int from, int length) throws IOException {
            if (at >= end) {
                return -1;
            }
            int read = file.read(ByteBuffer.wrap(into, from, (int) Math.min(length, end - at)), at);
            at += Math.max(0, read);
            return read;
        }
    }
}
