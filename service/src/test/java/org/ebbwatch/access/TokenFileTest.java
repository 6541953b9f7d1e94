package org.ebbwatch.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TokenFileTest {
    @TempDir
    private Path folder;

    private TokenFile tokens;

    @BeforeEach
    void nobody_has_a_token_yet() {
        tokens = new TokenFile(folder);
    }

    @Test
    void a_token_is_made_once_and_shown_once() throws IOException {
        Optional<String> first = tokens.begin();

        assertThat(first).hasValueSatisfying(token -> assertThat(token).matches("[A-Za-z0-9_-]{43}"));
        assertThat(tokens.begin()).isEmpty();
        assertThat(new TokenFile(folder).admits(first.orElseThrow())).isTrue();
    }

    @Test
    void a_new_one_revokes_the_one_before() throws IOException {
        String first = tokens.renew();
        String second = new TokenFile(folder).renew();

        assertThat(second).isNotEqualTo(first);
        assertThat(tokens.admits(first)).isFalse();
        assertThat(tokens.admits(second)).isTrue();
    }

    @Test
    void nothing_but_the_hash_is_kept_and_only_its_owner_may_read_it() throws IOException {
        String token = tokens.renew();

        assertThat(folder)
                .isDirectoryNotContaining(file -> !file.getFileName().toString().equals(TokenFile.NAME));
        Path file = folder.resolve(TokenFile.NAME);
        assertThat(Files.readString(file)).matches("[0-9a-f]{64}\n").doesNotContain(token);
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-------");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "kite", "00", "zz", "0000000000000000000000000000000000000000000000000000000000000000"})
    void a_file_that_holds_no_hash_of_the_token_lets_nobody_in(String held) throws IOException {
        String token = tokens.renew();
        Files.writeString(folder.resolve(TokenFile.NAME), held);

        assertThat(tokens.admits(token)).isFalse();
        assertThat(tokens.admits("")).isFalse();
        assertThat(tokens.admits(held)).isFalse();
    }

    @Test
    void without_a_file_nobody_is_let_in() {
        assertThat(tokens.admits("")).isFalse();
        assertThat(tokens.admits("kite")).isFalse();
    }

    @Test
    void a_token_of_a_thousand_letters_is_not_even_hashed() throws IOException {
        String token = tokens.renew();

        assertThat(tokens.admits(token + " ".repeat(1_000))).isFalse();
    }

    @Test
    void a_folder_that_is_not_there_is_told() {
        assertThatThrownBy(() -> new TokenFile(folder.resolve("nowhere")).renew())
                .isInstanceOf(IOException.class);
    }
}
