package org.ebbwatch.evidence.container;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import org.ebbwatch.trace.codec.Sha256;

/**
 * Writes a container: part after part, then the directory and the seal. The same parts give the same bytes wherever the same
 * zlib packs them. Nothing of it is a bundle before {@link #seal} has returned. For one thread.
 */
public final class SealedZipWriter implements AutoCloseable {
    private final FileChannel file;
    private final OutputStream out;
    private final List<PartHeader> headers = new ArrayList<>();
    private final List<Part> parts = new ArrayList<>();
    private boolean partOpen;
    private long unpackedBytes;

    private SealedZipWriter(FileChannel file) {
        this.file = file;
        this.out = new BufferedOutputStream(Channels.newOutputStream(file), 1 << 16);
    }

    /** Begins a container in this file, which is emptied if it is there. */
    public static SealedZipWriter create(Path file) throws IOException {
        return new SealedZipWriter(FileChannel.open(
                file,
                StandardOpenOption.CREATE,
                StandardOpenOption.TRUNCATE_EXISTING,
                StandardOpenOption.READ,
                StandardOpenOption.WRITE));
    }

    /** Begins the next part, to be closed before anything else is done here. */
    public OutputStream part(String path) throws IOException {
        boolean known = parts.stream().anyMatch(part -> part.path().equals(path));
        if (partOpen || known || !PartHeader.isName(path) || parts.size() == PartHeader.PARTS_MOST) {
            throw new IllegalStateException("no part " + path + " can begin here");
        }
        partOpen = true;
        out.flush();
        long offset = file.position();
        out.write(new PartHeader(path, 0, 0, 0, offset).local());
        return new PartStream(path, offset);
    }

    /** The parts that are complete. */
    public List<Part> parts() {
        return List.copyOf(parts);
    }

    /** Completes the container and forces it to disk. */
    public void seal() throws IOException {
        if (partOpen) {
            throw new IllegalStateException("a part is still open");
        }
        out.flush();
        long directory = file.position();
        for (PartHeader header : headers) {
            out.write(header.central());
        }
        out.flush();
        requireRoom(file.position());
        out.write(PartHeader.end(headers.size(), file.position() - directory, directory, Seal.BYTES));
        out.write(Seal.beforeDigest());
        out.flush();
        out.write(PartHeader.ascii(Seal.digest(file, file.position()).toString()));
        out.flush();
        file.force(true);
    }

    @Override
    public void close() throws IOException {
        file.close();
    }

    private static void requireRoom(long bytes) throws IOException {
        if (bytes > PartHeader.MOST_BYTES) {
            throw new IOException("a bundle holds less than 4 GiB");
        }
    }

    private final class PartStream extends OutputStream {
        private final String path;
        private final long offset;
        private final CRC32 crc = new CRC32();
        private final MessageDigest digest = Seal.sha256();
        private final Deflater deflater = new Deflater(Deflater.DEFAULT_COMPRESSION, true);
        private final DeflaterOutputStream packed = new DeflaterOutputStream(out, deflater, 1 << 16);
        private boolean closed;

        PartStream(String path, long offset) {
            this.path = path;
            this.offset = offset;
        }

        @Override
        public void write(int one) throws IOException {
            write(new byte[] {(byte) one}, 0, 1);
        }

        @Override
        public void write(byte[] bytes, int from, int length) throws IOException {
            unpackedBytes += length;
            requireRoom(unpackedBytes);
            crc.update(bytes, from, length);
            digest.update(bytes, from, length);
            packed.write(bytes, from, length);
        }

        @Override
        public void close() throws IOException {
            if (closed) {
                return;
            }
            closed = true;
            packed.finish();
            out.flush();
            var header = new PartHeader(
                    path, (int) crc.getValue(), deflater.getBytesWritten(), deflater.getBytesRead(), offset);
            deflater.end();
            requireRoom(file.position());
            ByteBuffer local = ByteBuffer.wrap(header.local());
            while (local.hasRemaining()) {
                file.write(local, offset + local.position());
            }
            headers.add(header);
            parts.add(new Part(path, header.bytes(), Sha256.wrap(digest.digest())));
            partOpen = false;
        }
    }
}
