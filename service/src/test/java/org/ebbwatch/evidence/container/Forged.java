package org.ebbwatch.evidence.container;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import org.ebbwatch.trace.codec.Sha256;

/** Containers that no writer makes, with a seal that fits. */
public final class Forged {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final List<PartHeader> headers = new ArrayList<>();
    private int countedParts = -1;

    /** A part as a writer makes it, whatever its name. */
    public Forged part(String name, byte[] content) {
        byte[] packed = deflate(content);
        return part(new PartHeader(name, crc(content), packed.length, content.length, out.size()), packed);
    }

    Forged part(PartHeader header, byte[] packed) {
        bytes(header.local()).bytes(packed);
        headers.add(header);
        return this;
    }

    /** Bytes that belong to no part. */
    Forged bytes(byte[] bytes) {
        out.writeBytes(bytes);
        return this;
    }

    Forged counting(int parts) {
        countedParts = parts;
        return this;
    }

    int size() {
        return out.size();
    }

    /** Directory, end and seal behind what is there. */
    public byte[] sealed() {
        int directory = out.size();
        headers.forEach(header -> out.writeBytes(header.central()));
        int count = countedParts < 0 ? headers.size() : countedParts;
        out.writeBytes(PartHeader.end(count, out.size() - directory, directory, Seal.BYTES));
        out.writeBytes(Seal.beforeDigest());
        out.writeBytes(new byte[Seal.DIGITS]);
        return resealed(out.toByteArray());
    }

    /** The same bytes with a seal that fits them. */
    public static byte[] resealed(byte[] container) {
        byte[] body = Arrays.copyOf(container, container.length - Seal.DIGITS);
        byte[] sealed = Arrays.copyOf(body, container.length);
        byte[] digest = Sha256.of(body).toString().getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(digest, 0, sealed, body.length, Seal.DIGITS);
        return sealed;
    }

    /** Writes over a file without emptying it first: some file systems force an emptied one to disk, which is slow. */
    public static Path over(Path file, byte[] bytes) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            ByteBuffer left = ByteBuffer.wrap(bytes);
            while (left.hasRemaining()) {
                channel.write(left);
            }
            channel.truncate(bytes.length);
        }
        return file;
    }

    static byte[] deflate(byte[] content) {
        var deflater = new Deflater(Deflater.DEFAULT_COMPRESSION, true);
        deflater.setInput(content);
        deflater.finish();
        var packed = new ByteArrayOutputStream();
        byte[] buffer = new byte[1 << 16];
        while (!deflater.finished()) {
            packed.write(buffer, 0, deflater.deflate(buffer));
        }
        deflater.end();
        return packed.toByteArray();
    }

    static int crc(byte[] content) {
        var crc = new CRC32();
        crc.update(content);
        return (int) crc.getValue();
    }

    /** Everything a reader makes of a file. */
    static Map<String, List<Byte>> readAll(Path file) throws IOException {
        try (SealedZipReader zip = SealedZipReader.open(file)) {
            Map<String, List<Byte>> parts = new LinkedHashMap<>();
            for (String path : zip.paths()) {
                try (var in = zip.part(path)) {
                    parts.put(path, list(in.readAllBytes()));
                }
            }
            zip.checkSeal();
            return parts;
        }
    }

    static List<Byte> list(byte[] bytes) {
        List<Byte> list = new ArrayList<>();
        for (byte one : bytes) {
            list.add(one);
        }
        return list;
    }

    /** The bytes a writer makes of these parts. */
    static byte[] written(Path folder, Map<String, byte[]> parts) {
        Path file = folder.resolve("written.zip");
        try (SealedZipWriter zip = SealedZipWriter.create(file)) {
            for (Map.Entry<String, byte[]> part : parts.entrySet()) {
                try (var out = zip.part(part.getKey())) {
                    out.write(part.getValue());
                }
            }
            zip.seal();
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
