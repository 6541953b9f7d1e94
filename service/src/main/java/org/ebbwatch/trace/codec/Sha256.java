package org.ebbwatch.trace.codec;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;

/** A SHA-256 digest (FIPS 180-4): 32 bytes, compared by content. */
public final class Sha256 {

    public static final int BYTES = 32;

    /** 32 zero bytes: stands where there is nothing before the first. */
    public static final Sha256 NONE = new Sha256(new byte[BYTES]);

    private final byte[] digest;

    private Sha256(byte[] digest) {
        this.digest = digest;
    }

    public static Sha256 of(byte[] content) {
        try {
            return new Sha256(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    public static Sha256 of(String text) {
        return of(text.getBytes(StandardCharsets.UTF_8));
    }

    /** Takes the 32 bytes of a digest made earlier. */
    public static Sha256 wrap(byte[] digest) {
        if (digest.length != BYTES) {
            throw new IllegalArgumentException("a SHA-256 digest has 32 bytes, not " + digest.length);
        }
        return new Sha256(digest.clone());
    }

    public byte[] toBytes() {
        return digest.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Sha256 that && Arrays.equals(digest, that.digest);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(digest);
    }

    /** 64 lower-case hexadecimal digits. */
    @Override
    public String toString() {
        return HexFormat.of().formatHex(digest);
    }
}
