package org.ebbwatch.evidence.signature;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.HexFormat;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SigningKeyTest {
    private static final byte[] LETTER = "Dear all".getBytes(StandardCharsets.US_ASCII);

    @TempDir
    Path folder;

    @Test
    void a_key_made_once_stays_the_same_and_is_its_owners_alone() throws IOException {
        SigningKey key = SigningKey.of(folder);
        assertThat(SigningKey.of(folder).signer()).isEqualTo(key.signer());
        assertThat(Files.getPosixFilePermissions(folder.resolve(SigningKey.NAME)))
                .isEqualTo(PosixFilePermissions.fromString("rw-------"));
        try (var files = Files.list(folder)) {
            assertThat(files).hasSize(1);
        }
    }

    @Test
    void what_it_signs_is_known_as_its_own_and_nothing_else_is() {
        SigningKey key = SigningKey.fresh();
        byte[] signature = key.sign(LETTER);
        assertThat(key.sign(LETTER)).isEqualTo(signature);
        assertThat(key.signer().signed(LETTER, signature)).isTrue();
        assertThat(key.signer().signed("Dear All".getBytes(StandardCharsets.US_ASCII), signature))
                .isFalse();
        assertThat(SigningKey.fresh().signer().signed(LETTER, signature)).isFalse();
        signature[5] ^= 1;
        assertThat(key.signer().signed(LETTER, signature)).isFalse();
        assertThat(key.signer().signed(LETTER, new byte[3])).isFalse();
    }

    @ParameterizedTest
    @CsvSource({
        // source: RFC 8032, section 7.1, TEST 1 (the empty message) and TEST 2 (one byte)
        "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a, '',"
                + "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46b"
                + "d25bf5f0595bbe24655141438e7a100b",
        "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c, 72,"
                + "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c"
                + "387b2eaeb4302aeeb00d291612bb0c00"
    })
    void signatures_of_the_standard_are_believed(String key, String message, String signature) {
        assertThat(SignerKey.parse(key)
                        .signed(HexFormat.of().parseHex(message), HexFormat.of().parseHex(signature)))
                .isTrue();
    }

    @Test
    void a_key_is_read_however_people_pass_it_on() {
        SignerKey key = SigningKey.fresh().signer();
        assertThat(key.toString()).matches("([0-9a-f]{8} ){7}[0-9a-f]{8}");
        assertThat(SignerKey.parse(key.toString())).isEqualTo(key);
        assertThat(SignerKey.parse(" " + key.hex().toUpperCase(Locale.ROOT) + "\n"))
                .isEqualTo(key);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "abc", "zz5a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a"})
    void what_is_no_key_is_refused(String text) {
        assertThatThrownBy(() -> SignerKey.parse(text)).hasMessageContaining("64 hexadecimal digits");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "nonsense\nnonsense\n", "MC4CAQAwBQYDK2VwBCIEIA==\n"})
    void a_damaged_key_is_never_replaced_in_silence(String content) throws IOException {
        Path file = Files.writeString(folder.resolve(SigningKey.NAME), content);
        assertThatThrownBy(() -> SigningKey.of(folder)).hasMessageContaining("is damaged");
        assertThat(file).hasContent(content);
    }

    @Test
    void a_key_whose_halves_belong_to_two_is_damaged() throws IOException {
        SigningKey.of(folder);
        Path file = folder.resolve(SigningKey.NAME);
        String secret = Files.readAllLines(file).get(0);
        Files.writeString(file, secret + "\n" + SigningKey.fresh().signer().hex() + "\n");
        assertThatThrownBy(() -> SigningKey.of(folder)).hasMessageContaining("is damaged");
    }
}
