package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;

import io.micronaut.json.tree.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every way in which a request about an alarm can be wrong, and that nothing is done for it. */
class AlarmStepRefusalsTest extends AlarmBench {
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
}
