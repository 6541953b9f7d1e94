package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import io.micronaut.json.tree.JsonNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import org.ebbwatch.access.TokenFile;
import org.ebbwatch.handwork.Client.Answer;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every way in which a request can be wrong, and that nothing is done for it. */
class DeskRoutesTest {
    private static final String CHECK_IN =
            """
            {"board": "bench", "channel": 0, "tag": "A-17", "chemistry": "nmc", "ratedAmpereHours": 2.0,
             "loadOhms": 22, "switched": true, "procedure": "careful"}
            """;

    @TempDir
    private Path records;

    private Place place;
    private Client client;
    private String id;
    private String seen;

    @BeforeEach
    void a_cell_is_checked_in() {
        BoardSpec board = BoardSpec.build(
                        "EB-1",
                        List.of(
                                ChannelSpec.switched(
                                        CellSpec.build("A-17", NMC, 2.0).done(), 22),
                                ChannelSpec.empty(22)))
                .done();
        place = Place.of(QuietRack.of(board, records), records);
        client = new Client(place);
        Answer opened = client.post("/api/v1/passages", CHECK_IN);
        assertThat(opened.status()).as(opened.body()).isEqualTo(201);
        id = opened.text("passageId");
        place.rack().pass(120_000);
        seen = client.tag(id);
    }

    @AfterEach
    void close() {
        place.close();
    }

    private String path(String what) {
        return "/api/v1/passages/" + id + '/' + what;
    }

    private List<String> journal() {
        return place.rack().journal(UUID.fromString(id));
    }

    /** A problem of this kind, and nothing done. */
    private JsonNode problem(int status, String kind, Supplier<Answer> request) {
        List<String> before = journal();
        Answer answer = request.get();
        assertThat(answer.status()).as(answer.body()).isEqualTo(status);
        assertThat(answer.header("content-type")).isEqualTo("application/problem+json");
        assertThat(answer.text("type")).isEqualTo("/api/v1/problems/" + kind);
        assertThat(answer.text("detail")).isNotBlank();
        assertThat(journal()).isEqualTo(before);
        assertThat(place.rack().view().passages()).hasSize(1);
        return answer.json();
    }

    @Test
    void checking_in_answers_where_the_passage_is_and_what_its_tag_is() {
        Answer again = client.get("/api/v1/passages/" + id);

        assertThat(again.json().get("passage").get("tag").getStringValue()).isEqualTo("A-17");
        assertThat(again.header("etag"))
                .isEqualTo("\"" + again.json().get("passage").get("sequence").getLongValue() + '"');
    }

    @Test
    void an_act_that_is_allowed_is_done_and_gives_the_next_tag() {
        Answer done = client.post(path("acts"), "{\"act\": \"PUT_ON\"}");

        assertThat(done.status()).as(done.body()).isEqualTo(200);
        assertThat(done.text("phase")).isEqualTo("DRAIN");
        assertThat(done.json().get("onDisk").getBooleanValue()).isTrue();
        assertThat(done.header("etag")).isEqualTo(client.tag(id)).isNotEqualTo(seen);
    }

    @Test
    void an_act_the_phase_does_not_allow_names_phase_request_and_what_is_allowed() {
        JsonNode problem =
                problem(409, "not-now", () -> client.post(path("acts"), "{\"act\": \"TIE_OFF\", \"spark\": false}"));

        assertThat(problem.get("phase").getStringValue()).isEqualTo("CHECK_IN");
        assertThat(problem.get("request").getStringValue()).isEqualTo("TIE_OFF");
        assertThat(problem.get("allowed").get(0).getStringValue()).isEqualTo("PUT_ON");
        assertThat(problem.get("allowed").get(1).getStringValue()).isEqualTo("WITHDRAW");
    }

    @Test
    void a_request_without_if_match_must_say_what_was_seen() {
        problem(428, "no-condition", () -> client.post(path("acts"), "{\"act\": \"PUT_ON\"}", Map.of("If-Match", "")));
    }

    @Test
    void a_stale_if_match_is_told_the_sequence_as_it_is_now() {
        client.post(path("announcements"), "{\"kind\": \"TOUCH\", \"minutes\": 5}");
        String now = client.tag(id);

        JsonNode problem = problem(
                412,
                "changed-since",
                () -> client.post(path("acts"), "{\"act\": \"PUT_ON\"}", Map.of("If-Match", seen)));

        assertThat('"' + Long.toString(problem.get("sequence").getLongValue()) + '"')
                .isEqualTo(now);
    }

    @ParameterizedTest
    @ValueSource(strings = {"*", "0", "W/\"0\"", "\"0\", \"1\"", "\"zero\"", "\"-1\"", "\"99999999999999999999\""})
    void an_if_match_that_is_no_tag_of_ours_is_refused(String tag) {
        problem(
                400,
                "bad-parameter",
                () -> client.post(path("acts"), "{\"act\": \"PUT_ON\"}", Map.of("If-Match", tag)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "short"})
    void a_request_needs_a_key_of_its_own(String key) {
        problem(
                400,
                "no-key",
                () -> client.post(path("acts"), "{\"act\": \"PUT_ON\"}", Map.of("Idempotency-Key", key)));
    }

    @Test
    void the_same_key_with_the_same_body_gives_the_same_answer_and_does_it_once() {
        Map<String, String> guard = Map.of("If-Match", seen, "Idempotency-Key", "put it on, please");
        Answer first = client.post(path("acts"), "{\"act\": \"PUT_ON\"}", guard);
        assertThat(first.status()).isEqualTo(200);
        List<String> journal = journal();

        Answer second = client.post(path("acts"), "{ \"act\":\"PUT_ON\" }", guard);

        assertThat(second.status()).isEqualTo(first.status());
        assertThat(second.body()).isEqualTo(first.body());
        assertThat(second.header("etag")).isEqualTo(first.header("etag"));
        assertThat(journal()).isEqualTo(journal);
    }

    @Test
    void the_same_key_with_another_body_is_refused() {
        Map<String, String> guard = Map.of("If-Match", seen, "Idempotency-Key", "put it on, please");
        client.post(path("announcements"), "{\"kind\": \"TOUCH\", \"minutes\": 5}", guard);

        problem(422, "key-used", () -> client.post(path("acts"), "{\"act\": \"PUT_ON\"}", guard));
    }

    @Test
    void checking_in_again_with_the_same_key_opens_nothing_and_answers_the_same() {
        Map<String, String> guard = Map.of("Idempotency-Key", "the cell on channel one");
        String other = CHECK_IN.replace("\"channel\": 0", "\"channel\": 1").replace("A-17", "A-18");
        Answer first = client.post("/api/v1/passages", other, guard);
        Answer second = client.post("/api/v1/passages", other, guard);

        assertThat(first.status()).isEqualTo(201);
        assertThat(second.body()).isEqualTo(first.body());
        assertThat(second.header("location"))
                .isEqualTo(first.header("location"))
                .endsWith(first.text("passageId"));
        assertThat(place.rack().view().passages()).hasSize(2);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "PUT_ON",
                "{",
                "{\"act\": }",
                "{\"act\": \"PUT_ON\"",
                "{\"act\": \"PUT_ON\"}}",
                "[\"PUT_ON\"]",
                "{\"act\": \"PUT_ON\", \"act\": \"WITHDRAW\"}",
                "{\"act\": NaN}",
                "null"
            })
    void what_is_no_json_object_is_malformed(String body) {
        problem(400, "malformed-body", () -> client.post(path("acts"), body));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "acts | {} | act is missing",
                "acts | {\"act\": \"EXPLODE\"} | one of PUT_ON, TAKE_OFF",
                "acts | {\"act\": 3} | one of PUT_ON, TAKE_OFF",
                "acts | {\"act\": \"PUT_ON\", \"sparks\": true} | no field \"sparks\"",
                "acts | {\"act\": \"PUT_ON\", \"spark\": true} | spark belongs to TIE_OFF",
                "acts | {\"act\": \"TIE_OFF\"} | spark is missing",
                "acts | {\"act\": \"TIE_OFF\", \"spark\": \"no\"} | true or false",
                "meter-readings | {\"volts\": 1e300} | -5.5 to 5.5",
                "meter-readings | {\"volts\": 1e999} | -5.5 to 5.5",
                "meter-readings | {\"volts\": \"NaN\"} | -5.5 to 5.5",
                "meter-readings | {\"volts\": -12} | -5.5 to 5.5",
                "meter-readings | {\"volts\": {\"value\": 1}} | -5.5 to 5.5",
                "meter-readings | {\"volts\": null} | volts is missing",
                "announcements | {\"kind\": \"TOUCH\", \"minutes\": 0} | 1 to 60",
                "announcements | {\"kind\": \"TOUCH\", \"minutes\": 61} | 1 to 60",
                "announcements | {\"kind\": \"TOUCH\", \"minutes\": 99999999999999999999} | 1 to 60",
                "announcements | {\"kind\": \"TOUCH\", \"minutes\": 1.5} | whole number",
                "announcements | {\"kind\": \"NAP\", \"minutes\": 5} | one of PROBE, TOUCH, HAND_WORK",
                "blinks | {\"seconds\": -1} | 0 to 255",
                "blinks | {\"seconds\": 256} | 0 to 255",
                "moves | {\"channel\": 64} | 0 to 63",
                "moves | {\"channel\": 3} | no cell channel"
            })
    void what_cannot_be_used_is_refused_with_what_it_takes(String what, String body, String takes) {
        JsonNode problem = problem(422, "bad-body", () -> client.post(path(what), body));

        assertThat(problem.get("detail").getStringValue()).contains(takes);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"bench\" | \"attic\" | there are bench",
                "\"channel\": 0 | \"channel\": 2 | that fit: [0, 1]",
                "\"channel\": 0 | \"channel\": -1 | 0 to 63",
                "2.0 | -2.0 | 0.01 to 1000",
                "2.0 | 1e300 | 0.01 to 1000",
                "22 | 0 | 0.01 to 100000",
                "22 | 22, \"loadTolerancePercent\": 20.1 | loadTolerancePercent cannot be 20.1; it takes a number from 0 to 20",
                "22 | 22, \"loadTolerancePercent\": -1 | a number from 0 to 20",
                "22 | 22, \"loadTolerancePercent\": \"1\" | a number from 0 to 20",
                "\"nmc\" | \"nimh\" | one of nmc, nca, lco, lmo, lfp",
                "\"A-17\" | \"=cmd()\" | letters",
                "\"careful\" | \"hasty\" | one of careful, strict, lfp, large, damaged",
                "\"careful\" | \"lfp\" | for iron phosphate cells",
                "\"switched\": true | \"switched\": true, \"inString\": true | A string has a name",
                "\"switched\": true | \"switched\": true, \"string\": \"P1\" | stringFirstChannel",
                "\"channel\": 0 | \"channel\": 0, \"string\": \"P1\", \"stringFirstChannel\": 1, \"stringCells\": 2 | neighbouring",
                "\"channel\": 0 | \"channel\": 0, \"string\": \"P1\", \"stringFirstChannel\": 0, \"stringCells\": 9 | no cell channel",
                "\"channel\": 0 | \"channel\": 0, \"string\": \"P1\", \"stringFirstChannel\": 0, \"stringCells\": 2 | at most 1000 ms"
            })
    void a_check_in_that_cannot_be_is_refused_with_what_could(String part, String instead, String hint) {
        String body = CHECK_IN.replace(part, instead);

        JsonNode problem = problem(422, "bad-body", () -> client.post("/api/v1/passages", body));

        assertThat(problem.get("detail").getStringValue()).contains(hint);
    }

    @Test
    void a_procedure_for_large_cells_is_refused_to_a_small_one() {
        String body = CHECK_IN.replace("2.0", "1.9").replace("careful", "large");

        JsonNode problem = problem(422, "bad-body", () -> client.post("/api/v1/passages", body));

        assertThat(problem.get("detail").getStringValue()).contains("2 Ah and more", "careful");
    }

    @Test
    void a_channel_that_is_taken_names_the_cell_on_it() {
        JsonNode problem =
                problem(409, "taken", () -> client.post("/api/v1/passages", CHECK_IN.replace("A-17", "A-18")));

        assertThat(problem.get("detail").getStringValue()).contains("A-17").contains(id);
    }

    @Test
    void a_passage_there_is_not_is_not_found() {
        problem(
                404,
                "unknown-passage",
                () -> client.post(
                        "/api/v1/passages/" + new UUID(1, 2) + "/acts",
                        "{\"act\": \"PUT_ON\"}",
                        Map.of("If-Match", "\"0\"")));
    }

    @Test
    void another_media_type_is_refused() {
        List<String> before = journal();

        Answer answer = client.post(path("acts"), "act=PUT_ON", Map.of("Content-Type", "text/plain"));

        assertThat(answer.status()).isEqualTo(415);
        assertThat(answer.header("content-type")).isEqualTo("application/problem+json");
        assertThat(journal()).isEqualTo(before);
    }

    @Test
    void a_body_of_a_megabyte_is_refused() {
        List<String> before = journal();
        String body = "{\"act\": \"PUT_ON\"" + " ".repeat(1_000_000) + '}';

        assertThat(client.post(path("acts"), body).status()).isEqualTo(413);
        assertThat(journal()).isEqualTo(before);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "Bearer ", "Bearer 0123456789", "Basic b3BlcmF0b3I6", "bearer"})
    void nobody_acts_without_the_operators_token(String shown) {
        problem(
                401,
                "no-token",
                () -> client.post(path("acts"), "{\"act\": \"PUT_ON\"}", Map.of("Authorization", shown)));
    }

    @Test
    void a_new_token_revokes_the_one_before_while_the_service_runs() throws IOException {
        String fresh = new TokenFile(records).renew();

        problem(401, "no-token", () -> client.post(path("acts"), "{\"act\": \"PUT_ON\"}"));
        assertThat(client.post(path("acts"), "{\"act\": \"PUT_ON\"}", Map.of("Authorization", "Bearer " + fresh))
                        .status())
                .isEqualTo(200);
    }

    @ParameterizedTest
    @ValueSource(strings = {"https://elsewhere.example", "null", "http://127.0.0.1.elsewhere.example"})
    void nobody_acts_from_a_foreign_page(String origin) {
        problem(
                403,
                "foreign-host",
                () -> client.post(path("acts"), "{\"act\": \"PUT_ON\"}", Map.of("Origin", origin)));
    }

    @ParameterizedTest
    @CsvSource({
        "elsewhere.example, 403",
        "elsewhere.example:8471, 403",
        "127.0.0.1.elsewhere.example, 403",
        "localhost, 200",
        "LOCALHOST.:80, 200",
        "127.0.0.1:1, 200",
        "[::1]:8471, 200"
    })
    void nobody_acts_under_a_foreign_name(String host, int status) throws IOException {
        List<String> before = journal();

        assertThat(postUnderName(host)).isEqualTo(status);
        assertThat(journal().equals(before)).isEqualTo(status == 403);
    }

    /** The JDK's client lets nobody choose the Host header. */
    private int postUnderName(String host) throws IOException {
        String body = "{\"act\": \"PUT_ON\"}";
        try (Socket socket =
                new Socket(InetAddress.getLoopbackAddress(), place.server().getPort())) {
            String request = String.join(
                    "\r\n",
                    "POST " + path("acts") + " HTTP/1.1",
                    "Host: " + host,
                    "Authorization: Bearer " + place.token(),
                    "Content-Type: application/json",
                    "If-Match: " + seen,
                    "Idempotency-Key: under another name",
                    "Connection: close",
                    "Content-Length: " + body.length(),
                    "",
                    body);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
            var answer = new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.US_ASCII));
            return Integer.parseInt(answer.readLine().split(" ", -1)[1]);
        }
    }

    @Test
    void reading_needs_no_token() {
        assertThat(client.get("/api/v1/rack").status()).isEqualTo(200);
    }

    @Test
    void the_token_is_kept_as_a_hash_alone() throws IOException {
        String kept = Files.readString(records.resolve(TokenFile.NAME));

        assertThat(kept.strip()).matches("[0-9a-f]{64}").doesNotContain(place.token());
    }
}
