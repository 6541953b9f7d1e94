package org.ebbwatch.alarm;

import static java.util.Objects.requireNonNull;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.Base64;
import java.util.Optional;
import java.util.UUID;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * Leave to acknowledge one alarm as it was after one of its steps. As text it is signed with HMAC-SHA256 (RFC 2104) and written in
 * base64url (RFC 4648, section 5), so that it can stand in a link and nobody can make or change one.
 *
 * @param alarm which
 * @param sequence how many steps it had made
 * @param untilWallMillis the leave ends then
 * @param outlet by which it was sent
 */
record AcknowledgeToken(UUID alarm, long sequence, long untilWallMillis, String outlet) {
    private static final String ALGORITHM = "HmacSHA256";
    private static final byte[] PURPOSE = "ebbwatch acknowledge 1\n".getBytes(StandardCharsets.US_ASCII);
    private static final int SIGNATURE_BYTES = 32;
    private static final int FIXED_BYTES = 32;
    private static final int LONGEST_TEXT = 400;

    AcknowledgeToken {
        requireNonNull(alarm);
        requireNonNull(outlet);
    }

    /** The text of it, signed. */
    String text(byte[] key) {
        byte[] name = outlet.getBytes(StandardCharsets.UTF_8);
        byte[] said = ByteBuffer.allocate(FIXED_BYTES + name.length)
                .putLong(alarm.getMostSignificantBits())
                .putLong(alarm.getLeastSignificantBits())
                .putLong(sequence)
                .putLong(untilWallMillis)
                .put(name)
                .array();
        byte[] whole = Arrays.copyOf(said, said.length + SIGNATURE_BYTES);
        System.arraycopy(signature(said, key), 0, whole, said.length, SIGNATURE_BYTES);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(whole);
    }

    /** Reads what {@link #text} gave; empty where it was not made with this key, or was changed. */
    static Optional<AcknowledgeToken> read(String text, byte[] key) {
        if (text.length() > LONGEST_TEXT) {
            return Optional.empty();
        }
        try {
            byte[] whole = Base64.getUrlDecoder().decode(text);
            byte[] said = Arrays.copyOf(whole, Math.max(0, whole.length - SIGNATURE_BYTES));
            byte[] signature = Arrays.copyOfRange(whole, said.length, whole.length);
            // The same bytes can be written in more than one way: only the one we write is believed, or it would work
            // twice.
            boolean ours = MessageDigest.isEqual(signature, signature(said, key))
                    && Base64.getUrlEncoder()
                            .withoutPadding()
                            .encodeToString(whole)
                            .equals(text);
            return ours ? Optional.of(token(ByteBuffer.wrap(said))) : Optional.empty();
        } catch (IllegalArgumentException | BufferUnderflowException noToken) {
            return Optional.empty();
        }
    }

    private static AcknowledgeToken token(ByteBuffer said) {
        var alarm = new UUID(said.getLong(), said.getLong());
        long sequence = said.getLong();
        long until = said.getLong();
        return new AcknowledgeToken(
                alarm, sequence, until, StandardCharsets.UTF_8.decode(said).toString());
    }

    private static byte[] signature(byte[] said, byte[] key) {
        try {
            Mac mac = Mac.getInstance(ALGORITHM);
            mac.init(new SecretKeySpec(key, ALGORITHM));
            mac.update(PURPOSE);
            return mac.doFinal(said);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java platform has " + ALGORITHM, e);
        }
    }
}
