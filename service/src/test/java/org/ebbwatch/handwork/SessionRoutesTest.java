package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.ebbwatch.handwork.Client.Answer;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A browser that has shown the token acts by a cookie, and only from our own page. */
class SessionRoutesTest {
    private static final String PATH = "/api/v1/session";

    @TempDir
    private Path records;

    private Place place;
    private Client client;

    @BeforeEach
    void serve() {
        BoardSpec board = BoardSpec.build(
                        "EB-1",
                        List.of(ChannelSpec.switched(
                                CellSpec.build("A-17", NMC, 2.0).done(), 22)))
                .done();
        place = Place.of(QuietRack.of(board, records), records);
        client = new Client(place);
    }

    @AfterEach
    void close() {
        place.close();
    }

    private Answer signIn(String token) {
        return client.post(PATH, "{\"token\": \"" + token + "\"}", Map.of("Authorization", ""));
    }

    /** The cookie of an answer as a browser sends it back. */
    private static String cookie(Answer answer) {
        String set = answer.header("set-cookie");
        return set.substring(0, set.indexOf(';'));
    }

    /** A check-in as the page sends it. */
    private Answer act(Map<String, String> headers) {
        Map<String, String> all = new HashMap<>(Map.of("Authorization", ""));
        all.putAll(headers);
        return client.post(
                "/api/v1/passages",
                """
                {"board": "bench", "channel": 0, "tag": "A-17", "chemistry": "nmc", "ratedAmpereHours": 2.0,
                 "loadOhms": 22, "switched": true}
                """,
                all);
    }

    private String ours() {
        return place.server().getURL().toString();
    }

    @Test
    void the_token_is_shown_once_and_a_cookie_acts_from_then_on() {
        Answer signedIn = signIn(place.token());
        assertThat(signedIn.status()).isEqualTo(200);
        assertThat(signedIn.json().get("signedIn").getBooleanValue()).isTrue();
        assertThat(signedIn.text("until")).endsWith("Z");

        assertThat(act(Map.of("Cookie", cookie(signedIn), "Origin", ours())).status())
                .isEqualTo(201);
    }

    @Test
    void no_script_reads_the_cookie_and_no_other_site_sends_it() {
        assertThat(signIn(place.token()).header("set-cookie"))
                .contains("HTTPOnly", "SameSite=Strict", "Path=/", "Max-Age=2592000")
                .doesNotContain(place.token());
    }

    @Test
    void another_token_gets_no_cookie() {
        Answer refused = signIn("not-the-token");
        assertThat(refused.status()).isEqualTo(401);
        assertThat(refused.header("set-cookie")).isEmpty();
        assertThat(refused.body()).doesNotContain("not-the-token");
    }

    @Test
    void a_cookie_without_the_mark_of_our_own_page_acts_on_nothing() {
        String cookie = cookie(signIn(place.token()));

        assertThat(act(Map.of("Cookie", cookie)).status()).isEqualTo(401);
        assertThat(act(Map.of("Cookie", cookie, "Origin", "https://stranger.example"))
                        .status())
                .isEqualTo(403);
        assertThat(act(Map.of("Cookie", cookie + "x", "Origin", ours())).status())
                .isEqualTo(401);
    }

    @Test
    void nobody_signs_in_from_a_foreign_page() {
        Answer refused = client.post(
                PATH,
                "{\"token\": \"" + place.token() + "\"}",
                Map.of("Authorization", "", "Origin", "https://stranger.example"));
        assertThat(refused.status()).isEqualTo(403);
    }

    @Test
    void the_page_learns_whether_it_is_signed_in() {
        assertThat(client.get(PATH).json().get("signedIn").getBooleanValue()).isFalse();
    }
}
