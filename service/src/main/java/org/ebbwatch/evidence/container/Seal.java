package org.ebbwatch.evidence.container;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ebbwatch.trace.codec.Sha256;

/**
 * The comment at the container's end: the format's version and the SHA-256 of every byte before the digest itself. It finds
 * damage; anybody can make one, so it proves no author. Version 2 of the format added the parts
 * that explain and sign; the container is that of version 1.
 *
 * @param version of the bundle's format, 1 to 9
 * @param digest 64 lower-case hexadecimal digits
 */
record Seal(int version, String digest) {
    static final int VERSION = 2;
    static final int DIGITS = 64;

    private static final String BEFORE_VERSION = "ebbwatch bundle ";
    private static final String BEFORE_DIGEST = ", sha256 ";
    private static final Pattern SEAL = Pattern.compile(BEFORE_VERSION + "([1-9])" + BEFORE_DIGEST + "([0-9a-f]{64})");

    /** Length of the whole comment. */
    static final int BYTES = BEFORE_VERSION.length() + 1 + BEFORE_DIGEST.length() + DIGITS;

    /** What stands before the digest. */
    static byte[] beforeDigest() {
        return PartHeader.ascii(BEFORE_VERSION + VERSION + BEFORE_DIGEST);
    }

    static Optional<Seal> read(byte[] comment) {
        Matcher seal = SEAL.matcher(new String(comment, StandardCharsets.ISO_8859_1));
        return seal.matches()
                ? Optional.of(new Seal(Integer.parseInt(seal.group(1)), seal.group(2)))
                : Optional.empty();
    }

    /** The digest of the first so many bytes of a file. */
    static Sha256 digest(FileChannel file, long bytes) throws IOException {
        MessageDigest digest = sha256();
        ByteBuffer buffer = ByteBuffer.allocate(1 << 16);
        long at = 0;
        while (at < bytes) {
            buffer.clear().limit((int) Math.min(buffer.capacity(), bytes - at));
            int read = file.read(buffer, at);
            if (read < 0) {
                throw new IOException("the file became shorter while it was read");
            }
            digest.update(buffer.flip());
            at += read;
        }
        return Sha256.wrap(digest.digest());
    }

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
