package org.ebbwatch.alarm.outlet;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.util.HexFormat;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * Signs what is posted, so that a receiver knows who sent it, and when: the HMAC-SHA256 (RFC 2104, FIPS 180-4) of
 * {@code time LF body} in UTF-8, as 64 hexadecimal digits. The secret is never shown.
 */
public final class BodySignature {
    /** The header with the signature. */
    static final String HEADER = "Ebbwatch-Signature";
    /** The header with the time that is signed: whole seconds since 1970-01-01T00:00Z. */
    static final String TIME_HEADER = "Ebbwatch-Signed-At";

    private static final String ALGORITHM = "HmacSHA256";
    private static final int SHORTEST_SECRET = 16;

    private final SecretKeySpec key;

    /**
     * Takes the secret that the receiver knows too.
     *
     * @throws IllegalArgumentException if it has fewer than 16 characters
     */
    public BodySignature(String secret) {
        if (secret.length() < SHORTEST_SECRET) {
            throw new IllegalArgumentException("the signing secret has at least " + SHORTEST_SECRET + " characters");
        }
        key = new SecretKeySpec(secret.getBytes(StandardCharsets.UTF_8), ALGORITHM);
    }

    String of(long epochSeconds, String body) {
        try {
            Mac mac = Mac.getInstance(ALGORITHM);
            mac.init(key);
            return HexFormat.of().formatHex(mac.doFinal((epochSeconds + "\n" + body).getBytes(StandardCharsets.UTF_8)));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java platform has " + ALGORITHM, e);
        }
    }

    @Override
    public String toString() {
        return "a signature";
    }
}
