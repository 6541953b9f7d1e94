package org.ebbwatch.evidence.signature;

import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PublicKey;
import java.security.Signature;
import java.security.spec.X509EncodedKeySpec;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Locale;

/**
 * The public key of whoever signs bundles: the 32 bytes of an Ed25519 key (RFC 8032, 5.1.5). Short enough to be compared whole, so
 * there is no fingerprint.
 *
 * @param hex 64 lower-case hexadecimal digits
 */
public record SignerKey(String hex) {
    static final String ALGORITHM = "Ed25519";
    /** What a SubjectPublicKeyInfo of this algorithm begins with (RFC 8410, section 4). */
    private static final byte[] INFO = HexFormat.of().parseHex("302a300506032b6570032100");

    private static final int KEY_BYTES = 32;
    private static final int GROUP = 8;

    /** Refuses anything but 64 lower-case hexadecimal digits. */
    public SignerKey {
        if (!hex.matches("[0-9a-f]{64}")) {
            throw new IllegalArgumentException("a signer's key has 64 hexadecimal digits");
        }
    }

    /**
     * Reads a key as people pass it on: in groups or not, in upper or lower case.
     *
     * @throws IllegalArgumentException if it has not 64 hexadecimal digits
     */
    public static SignerKey parse(String text) {
        return new SignerKey(text.replaceAll("[\\s:-]", "").toLowerCase(Locale.ROOT));
    }

    static SignerKey of(PublicKey key) {
        byte[] encoded = key.getEncoded();
        return new SignerKey(HexFormat.of().formatHex(encoded, encoded.length - KEY_BYTES, encoded.length));
    }

    /** Whether this key's owner signed these bytes. */
    public boolean signed(byte[] message, byte[] signature) {
        try {
            Signature verifying = Signature.getInstance(ALGORITHM);
            verifying.initVerify(key());
            verifying.update(message);
            return verifying.verify(signature);
        } catch (GeneralSecurityException noSuchSignature) {
            return false;
        }
    }

    private PublicKey key() throws GeneralSecurityException {
        byte[] encoded = Arrays.copyOf(INFO, INFO.length + KEY_BYTES);
        System.arraycopy(HexFormat.of().parseHex(hex), 0, encoded, INFO.length, KEY_BYTES);
        return KeyFactory.getInstance(ALGORITHM).generatePublic(new X509EncodedKeySpec(encoded));
    }

    /** In groups of eight digits, to be compared by eye or read out. */
    @Override
    public String toString() {
        return hex.replaceAll("(.{" + GROUP + "})(?=.)", "$1 ");
    }
}
