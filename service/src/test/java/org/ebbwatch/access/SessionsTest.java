package org.ebbwatch.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SessionsTest {
    private static final long DAY_MILLIS = 86_400_000L;

    @TempDir
    private Path folder;

    private TokenFile tokens;
    private String token;

    @BeforeEach
    void makeAToken() throws IOException {
        tokens = new TokenFile(folder);
        token = tokens.renew();
    }

    @Test
    void whoever_shows_the_token_gets_a_session_of_30_days() throws IOException {
        var sessions = new Sessions(tokens);
        String key = sessions.begin(token, 0).orElseThrow();

        assertThat(sessions.untilMillis(key, 0)).hasValue(30 * DAY_MILLIS);
        assertThat(sessions.untilMillis(key, 30 * DAY_MILLIS - 1)).isPresent();
        assertThat(sessions.untilMillis(key, 30 * DAY_MILLIS)).isEmpty();
    }

    @Test
    void another_token_gets_none() throws IOException {
        assertThat(new Sessions(tokens).begin("not the token", 0)).isEmpty();
        assertThat(folder.resolve(Sessions.NAME)).doesNotExist();
    }

    @Test
    void no_other_key_is_believed() throws IOException {
        var sessions = new Sessions(tokens);
        String key = sessions.begin(token, 0).orElseThrow();

        for (String other : new String[] {"", key + "x", key.substring(1), token, "x".repeat(1_000)}) {
            assertThat(sessions.untilMillis(other, 0)).as(other).isEmpty();
        }
    }

    @Test
    void a_session_outlives_the_service() throws IOException {
        String key = new Sessions(tokens).begin(token, 0).orElseThrow();

        assertThat(new Sessions(tokens).untilMillis(key, DAY_MILLIS)).hasValue(30 * DAY_MILLIS);
    }

    @Test
    void a_new_token_ends_all_sessions_also_of_a_service_that_runs() throws IOException {
        var sessions = new Sessions(tokens);
        String key = sessions.begin(token, 0).orElseThrow();
        new TokenFile(folder).renew();

        assertThat(sessions.untilMillis(key, 0)).isEmpty();
        assertThat(new Sessions(tokens).untilMillis(key, 0)).isEmpty();
    }

    @Test
    void signing_out_ends_this_session_alone_and_for_good() throws IOException {
        var sessions = new Sessions(tokens);
        String phone = sessions.begin(token, 0).orElseThrow();
        String bench = sessions.begin(token, 0).orElseThrow();
        sessions.end(phone);

        assertThat(sessions.untilMillis(phone, 0)).isEmpty();
        assertThat(new Sessions(tokens).untilMillis(phone, 0)).isEmpty();
        assertThat(sessions.untilMillis(bench, 0)).isPresent();
    }

    @Test
    void the_oldest_makes_room_for_the_65th() throws IOException {
        var sessions = new Sessions(tokens);
        String first = sessions.begin(token, 0).orElseThrow();
        String second = sessions.begin(token, 0).orElseThrow();
        for (int n = 2; n <= Sessions.MOST; n++) {
            assertThat(sessions.begin(token, 0)).isPresent();
        }

        assertThat(sessions.untilMillis(first, 0)).isEmpty();
        assertThat(sessions.untilMillis(second, 0)).isPresent();
    }

    @Test
    void keys_are_kept_as_hashes_for_the_owner_alone() throws IOException {
        String key = new Sessions(tokens).begin(token, 0).orElseThrow();
        Path file = folder.resolve(Sessions.NAME);

        assertThat(Files.readString(file)).doesNotContain(key).doesNotContain(token);
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-------");
    }

    @Test
    void a_damaged_file_lets_nobody_in_and_keeps_nobody_out() throws IOException {
        Files.writeString(folder.resolve(Sessions.NAME), "rubbish\n 1 \n\u0000 99999999999999999999 x\n");
        var sessions = new Sessions(tokens);

        assertThat(sessions.untilMillis("rubbish", 0)).isEmpty();
        assertThat(sessions.begin(token, 0)).isPresent();
    }
}
