package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;

import io.micronaut.json.tree.JsonNode;
import java.util.Map;
import org.ebbwatch.handwork.Client.Answer;
import org.ebbwatch.store.AlarmStepRow;
import org.junit.jupiter.api.Test;

/** What people ask about a plain alarm over HTTP, and that it is done once. */
class AlarmStepsTest extends AlarmBench {
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
