package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import io.micronaut.json.tree.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import org.ebbwatch.alarm.AlarmView;
import org.ebbwatch.alarm.AlarmsView;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.handwork.Client.Answer;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.ebbwatch.store.AlarmStepRow;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What people ask about a plain alarm over HTTP, and that nothing is done for what is wrong. */
class AlarmStepsTest {
    private static final String CHECK_IN =
            """
            {"board": "bench", "channel": 0, "tag": "A-17", "chemistry": "nmc", "ratedAmpereHours": 2.0,
             "loadOhms": 22, "switched": true}
            """;
    private static final String ACKNOWLEDGE = "{\"step\": \"ACKNOWLEDGED\"}";

    @TempDir
    private Path records;

    private Place place;
    private Client client;
    private String passage;
    private String id;

    /** A load put on before the lead was proven holds a passage: the alarm HELD. */
    @BeforeEach
    void a_passage_is_held() {
        BoardSpec board = BoardSpec.build(
                        "EB-1",
                        List.of(ChannelSpec.switched(
                                CellSpec.build("A-17", NMC, 2.0).done(), 22)))
                .done();
        place = Place.of(QuietRack.of(board, records), records);
        client = new Client(place);
        passage = client.post("/api/v1/passages", CHECK_IN).text("passageId");
        Answer early = client.post("/api/v1/passages/" + passage + "/acts", "{\"act\": \"PUT_ON\"}");
        assertThat(early.text("phase")).isEqualTo("HELD");
        id = alarm().id().toString();
        assertThat(alarm().kind()).isEqualTo(AlarmKind.HELD);
    }

    @AfterEach
    void close() {
        place.close();
    }

    private AlarmView alarm() {
        return place.rack().alarms().alarms().get(0);
    }

    private String path() {
        return "/api/v1/alarms/" + id + "/steps";
    }

    private List<AlarmStepRow> steps() {
        return place.rack().steps(UUID.fromString(id));
    }

    private AlarmStepRow lastStep() {
        return steps().get(steps().size() - 1);
    }

    /** A problem of this kind, and nothing done. */
    private JsonNode problem(int status, String kind, Supplier<Answer> request) {
        AlarmsView before = place.rack().alarms();
        List<AlarmStepRow> stepsBefore = steps();
        long news = place.rack().happenings().latest();
        Answer answer = request.get();
        assertThat(answer.status()).as(answer.body()).isEqualTo(status);
        assertThat(answer.header("content-type")).isEqualTo("application/problem+json");
        assertThat(answer.text("type")).isEqualTo("/api/v1/problems/" + kind);
        assertThat(answer.text("detail")).isNotBlank();
        assertThat(place.rack().alarms()).isEqualTo(before);
        assertThat(steps()).isEqualTo(stepsBefore);
        assertThat(place.rack().happenings().latest()).isEqualTo(news);
        return answer.json();
    }

    private Answer done(String body) {
        Answer answer = client.post(path(), body);
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
        return answer;
    }

    @Test
    void an_alarm_is_acknowledged_and_the_answer_carries_its_next_tag() {
        Answer done = done("{\"step\": \"ACKNOWLEDGED\", \"by\": \"Anna\"}");

        assertThat(done.text("alarmId")).isEqualTo(id);
        assertThat(done.text("kind")).isEqualTo("HELD");
        assertThat(done.text("step")).isEqualTo("ACKNOWLEDGED");
        assertThat(done.text("state")).isEqualTo("ACKNOWLEDGED");
        assertThat(done.text("cover")).isEqualTo("NONE");
        assertThat(done.text("by")).isEqualTo("Anna");
        assertThat(done.json().get("onDisk").getBooleanValue()).isTrue();
        assertThat(done.json().get("sequence").getLongValue()).isEqualTo(2);
        assertThat(done.header("etag"))
                .isEqualTo("\"2\"")
                .isEqualTo(client.get("/api/v1/alarms/" + id).header("etag"));
        assertThat(lastStep().who()).isEqualTo("Anna");
        assertThat(alarm().acknowledgedBy()).isEqualTo("Anna");
    }

    @Test
    void who_says_no_name_is_the_operator() {
        assertThat(done(ACKNOWLEDGE).text("by")).isEqualTo("operator");
        assertThat(lastStep().who()).isEqualTo("operator");
    }

    @Test
    void an_alarm_is_shelved_for_a_time_and_comes_back_by_itself() {
        Answer done =
                done("{\"step\": \"SHELVED\", \"minutes\": 30, \"reason\": \"waiting for a lead\", \"by\": \"Ben\"}");

        assertThat(done.text("cover")).isEqualTo("SHELVED");
        JsonNode shelved = client.get("/api/v1/alarms/" + id).json();
        assertThat(shelved.get("coveredBy").getStringValue()).isEqualTo("Ben");
        assertThat(shelved.get("coverReason").getStringValue()).isEqualTo("waiting for a lead");
        place.rack().pass(29 * 60_000);
        assertThat(alarm().cover().name()).isEqualTo("SHELVED");
        place.rack().pass(2 * 60_000);
        assertThat(alarm().cover().name()).isEqualTo("NONE");
        assertThat(lastStep().reason()).isEqualTo("its time is over");
    }

    @Test
    void shelving_is_ended_early() {
        done("{\"step\": \"SHELVED\", \"minutes\": 1440, \"reason\": \"waiting for a lead\"}");

        Answer done = done("{\"step\": \"SHELVING_ENDED\", \"by\": \"Anna\"}");

        assertThat(done.text("cover")).isEqualTo("NONE");
        assertThat(done.text("state")).isEqualTo("UNACKNOWLEDGED");
        assertThat(lastStep().who()).isEqualTo("Anna");
    }

    @Test
    void an_alarm_is_taken_out_of_service_and_put_back() {
        assertThat(done("{\"step\": \"TAKEN_OUT_OF_SERVICE\", \"reason\": \"new leads\"}")
                        .text("cover"))
                .isEqualTo("OUT_OF_SERVICE");
        place.rack().pass(25 * 3_600_000L);
        assertThat(alarm().cover().name()).isEqualTo("OUT_OF_SERVICE");
        assertThat(done("{\"step\": \"PUT_BACK_IN_SERVICE\"}").text("cover")).isEqualTo("NONE");
    }

    @Test
    void what_cannot_be_seen_in_a_name_or_a_reason_becomes_a_space() {
        done(
                "{\"step\": \"SHELVED\", \"minutes\": 5, \"by\": \" Anna\\u0000\\u202e\\n B. \", \"reason\": \"a\\u2028b\\ud800c µ 電\"}");

        assertThat(lastStep().who()).isEqualTo("Anna B.");
        assertThat(lastStep().reason()).isEqualTo("a b c µ 電");
    }

    @Test
    void what_is_not_allowed_names_the_state_what_was_asked_and_what_is_allowed() {
        done(ACKNOWLEDGE);
        JsonNode problem = problem(409, "not-now", () -> client.post(path(), ACKNOWLEDGE));

        assertThat(problem.get("request").getStringValue()).isEqualTo("ACKNOWLEDGED");
        assertThat(problem.get("detail").getStringValue()).contains("Somebody knows of it already: operator.");
        JsonNode alarm = problem.get("alarm");
        assertThat(alarm.get("id").getStringValue()).isEqualTo(id);
        assertThat(alarm.get("kind").getStringValue()).isEqualTo("HELD");
        assertThat(alarm.get("state").getStringValue()).isEqualTo("ACKNOWLEDGED");
        assertThat(alarm.get("cover").getStringValue()).isEqualTo("NONE");
        assertThat(names(alarm.get("allowed"))).containsExactly("SHELVED", "TAKEN_OUT_OF_SERVICE");
    }

    private static List<String> names(JsonNode list) {
        List<String> names = new ArrayList<>();
        list.values().forEach(each -> names.add(each.getStringValue()));
        return names;
    }

    @ParameterizedTest
    @CsvSource({
        "RESET, Only a latched alarm is reset",
        "SHELVING_ENDED, It is not shelved.",
        "PUT_BACK_IN_SERVICE, It is not out of service."
    })
    void a_step_that_the_alarm_cannot_make_says_why(String step, String why) {
        JsonNode problem = problem(409, "not-now", () -> client.post(path(), "{\"step\": \"" + step + "\"}"));

        assertThat(problem.get("request").getStringValue()).isEqualTo(step);
        assertThat(problem.get("detail").getStringValue()).contains(why);
    }

    @Test
    void an_alarm_put_away_is_neither_acknowledged_nor_put_away_again() {
        String shelve = "{\"step\": \"SHELVED\", \"minutes\": 5, \"reason\": \"later\"}";
        done(shelve);

        assertThat(problem(409, "not-now", () -> client.post(path(), ACKNOWLEDGE))
                        .get("detail")
                        .getStringValue())
                .contains("bring it back into view first");
        problem(409, "not-now", () -> client.post(path(), shelve));
    }

    @Test
    void an_alarm_that_made_a_step_meanwhile_is_not_acted_on() {
        String seen = client.get("/api/v1/alarms/" + id).header("etag");
        done("{\"step\": \"SHELVED\", \"minutes\": 5, \"reason\": \"later\"}");
        JsonNode problem =
                problem(412, "changed-since", () -> client.post(path(), ACKNOWLEDGE, Map.of("If-Match", seen)));

        assertThat(problem.get("sequence").getLongValue()).isEqualTo(2);
        assertThat(problem.get("alarm").get("cover").getStringValue()).isEqualTo("SHELVED");
        assertThat(problem.get("request").getStringValue()).isEqualTo("ACKNOWLEDGED");
    }

    @Test
    void a_request_without_token_condition_or_key_is_refused() {
        problem(401, "no-token", () -> client.post(path(), ACKNOWLEDGE, Map.of("Authorization", "")));
        problem(428, "no-condition", () -> client.post(path(), ACKNOWLEDGE, Map.of("If-Match", "")));
        problem(400, "bad-parameter", () -> client.post(path(), ACKNOWLEDGE, Map.of("If-Match", "*")));
        problem(400, "no-key", () -> client.post(path(), ACKNOWLEDGE, Map.of("Idempotency-Key", "")));
        problem(403, "foreign-host", () -> client.post(path(), ACKNOWLEDGE, Map.of("Origin", "http://rack.example")));
    }

    @Test
    void an_alarm_there_is_not_or_no_longer_is_not_found() {
        String unknown = "/api/v1/alarms/" + UUID.fromString(passage) + "/steps";
        problem(404, "unknown-alarm", () -> client.post(unknown, ACKNOWLEDGE, Map.of("If-Match", "\"1\"")));
        problem(400, "bad-parameter", () -> client.post("/api/v1/alarms/kite/steps", ACKNOWLEDGE));

        done(ACKNOWLEDGE);
        client.post("/api/v1/passages/" + passage + "/acts", "{\"act\": \"WITHDRAW\"}");
        assertThat(place.rack().alarms().alarms()).isEmpty();
        problem(404, "unknown-alarm", () -> client.post(path(), ACKNOWLEDGE, Map.of("If-Match", "\"3\"")));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{\"step\": \"RAISED\"} | one of ACKNOWLEDGED, RESET, SHELVED,",
                "{\"step\": \"TOLD\"} | one of ACKNOWLEDGED",
                "{\"step\": \"acknowledged\"} | one of ACKNOWLEDGED",
                "{\"by\": \"Anna\"} | The field step is missing",
                "{\"step\": \"ACKNOWLEDGED\", \"who\": \"Anna\"} | There is no field \"who\"",
                "{\"step\": \"ACKNOWLEDGED\", \"by\": \" \\u200b \"} | a text of 1 to 100 characters",
                "{\"step\": \"ACKNOWLEDGED\", \"by\": 7} | a text of 1 to 100 characters",
                "{\"step\": \"ACKNOWLEDGED\", \"reason\": \"why not\"} | reason belongs to SHELVED",
                "{\"step\": \"ACKNOWLEDGED\", \"minutes\": 5} | minutes belong to SHELVED alone",
                "{\"step\": \"TAKEN_OUT_OF_SERVICE\", \"reason\": \"work\", \"minutes\": 5} | minutes belong to SHELVED",
                "{\"step\": \"TAKEN_OUT_OF_SERVICE\"} | The field reason is missing",
                "{\"step\": \"SHELVED\", \"minutes\": 5} | The field reason is missing",
                "{\"step\": \"SHELVED\", \"reason\": \"later\"} | The field minutes is missing",
                "{\"step\": \"SHELVED\", \"reason\": \"later\", \"minutes\": 0} | a whole number from 1 to 1440",
                "{\"step\": \"SHELVED\", \"reason\": \"later\", \"minutes\": -5} | a whole number from 1 to 1440",
                "{\"step\": \"SHELVED\", \"reason\": \"later\", \"minutes\": 1441} | a whole number from 1 to 1440",
                "{\"step\": \"SHELVED\", \"reason\": \"later\", \"minutes\": 1e9} | a whole number from 1 to 1440",
                "{\"step\": \"SHELVED\", \"reason\": \"later\", \"minutes\": 4294967297} | a whole number from 1 to 1440"
            })
    void a_body_that_says_something_that_cannot_be_is_refused(String body, String why) {
        assertThat(problem(422, "bad-body", () -> client.post(path(), body))
                        .get("detail")
                        .getStringValue())
                .contains(why);
    }

    @Test
    void a_name_or_a_reason_that_is_too_long_is_refused() {
        String name = "n".repeat(101);
        String reason = "r".repeat(1_001);
        problem(422, "bad-body", () -> client.post(path(), "{\"step\": \"ACKNOWLEDGED\", \"by\": \"" + name + "\"}"));
        problem(
                422,
                "bad-body",
                () -> client.post(path(), "{\"step\": \"SHELVED\", \"minutes\": 5, \"reason\": \"" + reason + "\"}"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "{", "[]", "\"ACKNOWLEDGED\"", "{\"step\": \"RESET\"}{}", "{\"step\": 1, \"step\": 2}"})
    void a_body_that_is_no_single_object_is_refused(String body) {
        problem(400, "malformed-body", () -> client.post(path(), body));
    }

    @Test
    void a_request_sent_again_is_answered_again_and_done_once_across_a_restart_too() {
        Map<String, String> same = Map.of(
                "Idempotency-Key",
                "one-and-the-same",
                "If-Match",
                client.get("/api/v1/alarms/" + id).header("etag"));
        String body = "{\"step\": \"ACKNOWLEDGED\", \"by\": \"Anna\"}";
        Answer first = client.post(path(), body, same);
        assertThat(first.status()).as(first.body()).isEqualTo(200);
        done("{\"step\": \"TAKEN_OUT_OF_SERVICE\", \"reason\": \"new leads\"}");

        assertThat(client.post(path(), body, same).body()).isEqualTo(first.body());
        place.close();
        place = Place.of(place.rack().again(records), records);
        client = new Client(place);
        Answer again = client.post(path(), body, same);

        assertThat(again.status()).isEqualTo(200);
        assertThat(again.body()).isEqualTo(first.body());
        assertThat(steps())
                .extracting(AlarmStepRow::step)
                .containsExactly("RAISED", "ACKNOWLEDGED", "TAKEN_OUT_OF_SERVICE");
        problem(422, "key-used", () -> client.post(path(), "{\"step\": \"ACKNOWLEDGED\", \"by\": \"Ben\"}", same));
    }

    @Test
    void a_key_serves_either_a_passage_or_an_alarm() {
        Map<String, String> key = Map.of("Idempotency-Key", "one-and-the-same");
        client.post(path(), ACKNOWLEDGE, key);
        Answer act = client.post("/api/v1/passages/" + passage + "/acts", "{\"act\": \"WITHDRAW\"}", key);
        assertThat(act.text("type")).isEqualTo("/api/v1/problems/key-used");

        Map<String, String> other = Map.of("Idempotency-Key", "another-one");
        client.post(
                "/api/v1/passages/" + passage + "/announcements", "{\"kind\": \"HAND_WORK\", \"minutes\": 5}", other);
        problem(
                422,
                "key-used",
                () -> client.post(path(), "{\"step\": \"SHELVED\", \"minutes\": 5, \"reason\": \"later\"}", other));
    }
}
