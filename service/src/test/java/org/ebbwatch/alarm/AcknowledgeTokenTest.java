package org.ebbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.UUID;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;

class AcknowledgeTokenTest {
    private static final byte[] KEY = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16};
    private static final String LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

    private static final AcknowledgeToken TOKEN =
            new AcknowledgeToken(new UUID(0x0193f0a0_0000_7000L, 7), 3, 1_795_608_000_000L, "Ben at work");

    @Property
    void what_is_written_is_read_and_can_stand_in_a_link(
            @ForAll long most,
            @ForAll long least,
            @ForAll long sequence,
            @ForAll long until,
            @ForAll @StringLength(max = 40) String outlet,
            @ForAll @Size(min = 16, max = 32) byte[] key) {
        String name = outlet.replaceAll("\\p{Cs}", "x");
        var token = new AcknowledgeToken(new UUID(most, least), sequence, until, name);

        String text = token.text(key);

        assertThat(AcknowledgeToken.read(text, key)).contains(token);
        assertThat(text).matches("[A-Za-z0-9_-]{86,}");
    }

    @Property(tries = 2_000)
    void a_token_with_any_letter_changed_is_none(
            @ForAll @IntRange(max = 500) int place, @ForAll @IntRange(max = 63) int letter) {
        String text = TOKEN.text(KEY);
        int at = place % text.length();
        String changed = text.substring(0, at) + LETTERS.charAt(letter) + text.substring(at + 1);

        assertThat(AcknowledgeToken.read(changed, KEY).isPresent()).isEqualTo(changed.equals(text));
    }

    @Property
    void any_other_text_is_none(@ForAll String text) {
        assertThat(AcknowledgeToken.read(text, KEY)).isEmpty();
    }

    @Test
    void a_token_cut_short_or_lengthened_or_of_another_service_is_none() {
        String text = TOKEN.text(KEY);
        for (int length = 0; length < text.length(); length++) {
            assertThat(AcknowledgeToken.read(text.substring(0, length), KEY)).isEmpty();
        }
        assertThat(AcknowledgeToken.read(text + "A", KEY)).isEmpty();
        assertThat(AcknowledgeToken.read(text + "=", KEY)).isEmpty();
        assertThat(AcknowledgeToken.read("A".repeat(100_000), KEY)).isEmpty();
        assertThat(AcknowledgeToken.read(text, new byte[16])).isEmpty();
    }
}
