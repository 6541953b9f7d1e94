package org.ebbwatch.alarm.outlet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HexFormat;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class BodySignatureTest {
    private static final int BLOCK_BYTES = 64;

    /** H(K xor opad, H(K xor ipad, text)), as RFC 2104, section 2 writes it, from SHA-256 alone. */
    private static String byTheBook(String secret, String text) throws Exception {
        MessageDigest hash = MessageDigest.getInstance("SHA-256");
        byte[] given = secret.getBytes(StandardCharsets.UTF_8);
        byte[] key = Arrays.copyOf(given.length > BLOCK_BYTES ? hash.digest(given) : given, BLOCK_BYTES);
        for (int n = 0; n < BLOCK_BYTES; n++) {
            key[n] ^= 0x36;
        }
        hash.update(key);
        byte[] inner = hash.digest(text.getBytes(StandardCharsets.UTF_8));
        for (int n = 0; n < BLOCK_BYTES; n++) {
            key[n] ^= 0x36 ^ 0x5c;
        }
        hash.update(key);
        return HexFormat.of().formatHex(hash.digest(inner));
    }

    @Property(tries = 200)
    void is_the_hmac_of_time_and_body(
            @ForAll @IntRange(min = 0) int seconds,
            @ForAll String body,
            @ForAll @IntRange(min = 16, max = 200) int length)
            throws Exception {
        String secret = "k".repeat(length);

        assertThat(new BodySignature(secret).of(seconds, body)).isEqualTo(byTheBook(secret, seconds + "\n" + body));
    }

    @Test
    void the_book_is_read_right() throws Exception {
        // RFC 4231, test case 2: key "Jefe", data "what do ya want for nothing?".
        assertThat(byTheBook("Jefe", "what do ya want for nothing?"))
                .isEqualTo("5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843");
    }

    @Test
    void another_time_another_body_and_another_secret_are_another_signature() {
        var signature = new BodySignature("a secret of both sides");

        assertThat(signature.of(1, "{}"))
                .isNotEqualTo(signature.of(2, "{}"))
                .isNotEqualTo(signature.of(1, "[]"))
                .isNotEqualTo(new BodySignature("another secret of both").of(1, "{}"));
    }

    @Test
    void a_secret_that_can_be_guessed_is_refused_and_none_is_shown() {
        assertThatThrownBy(() -> new BodySignature("hush"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageNotContaining("hush");
        assertThat(new BodySignature("hush hush hush hush").toString()).doesNotContain("hush");
    }
}
