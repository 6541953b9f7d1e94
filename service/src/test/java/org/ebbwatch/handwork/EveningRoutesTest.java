package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;

import io.micronaut.json.tree.JsonNode;
import java.util.Map;
import org.ebbwatch.handwork.Client.Answer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Evening checks over REST. */
class EveningRoutesTest extends EveningBench {
    private static final String CHECKS = "/api/v1/evening-checks";

    private Place place;
    private Client client;

    @BeforeEach
    void serve() {
        place = Place.of(rack, records);
        client = new Client(place);
    }

    @Override
    void close() {
        place.close();
    }

    private static JsonNode point(Answer answer, String matter, String about) {
        for (JsonNode point : answer.json().get("points").values()) {
            boolean it = point.get("matter").getStringValue().equals(matter)
                    && point.get("about").getStringValue().equals(about);
            if (it) {
                return point;
            }
        }
        throw new AssertionError("no " + matter + " of " + about + " in " + answer.body());
    }

    private Answer step(String id, String body) {
        return client.post(CHECKS + '/' + id + "/steps", body, Map.of("If-Match", ""));
    }

    @Test
    void a_check_is_started_gone_through_and_kept() {
        Answer begun = client.post(CHECKS, "{\"by\": \"Anna\", \"touchMinutes\": 10}");
        assertThat(begun.status()).as(begun.body()).isEqualTo(200);
        assertThat(begun.text("state")).isEqualTo("RUNNING");
        assertThat(begun.json().get("awaits").size()).isEqualTo(3);
        String id = begun.text("id");

        rack.deliver();
        hold(SWITCHED, BY_HAND, FRESH);
        rack.pass(5 * MINUTE);
        Answer heard = step(id, "{\"step\": \"HEARD\", \"outlet\": \"telephone\", \"by\": \"Anna\"}");
        assertThat(heard.status()).as(heard.body()).isEqualTo(200);
        assertThat(point(heard, "OUTLET", "telephone").get("proof").getStringValue())
                .isEqualTo("PASSED");
        rack.step();

        Answer kept = client.get(CHECKS + '/' + id);
        assertThat(kept.text("state")).isEqualTo("ENDED");
        assertThat(kept.text("verdict")).as(kept.body()).isEqualTo("PASSED");
        assertThat(point(kept, "LOAD", "A").get("passageId").getStringValue())
                .isEqualTo(cell(SWITCHED).id().toString());
        assertThat(client.get(CHECKS).json().get("checks").size()).isEqualTo(1);
        assertThat(step(id, "{\"step\": \"FINISHED\"}").text("verdict")).isEqualTo("PASSED");
    }

    @Test
    void whoever_has_no_token_or_no_key_starts_nothing() {
        assertThat(client.post(CHECKS, "{}", Map.of("Authorization", "")).status())
                .isEqualTo(401);
        assertThat(client.post(CHECKS, "{}", Map.of("Idempotency-Key", "")).status())
                .isEqualTo(400);
        assertThat(client.get(CHECKS).json().get("checks").size()).isZero();
    }

    @Test
    void what_cannot_be_is_refused_with_what_can() {
        assertThat(client.post(CHECKS, "{\"touchMinutes\": 31}").text("detail")).contains("0 to 30");
        assertThat(client.get(CHECKS + "/00000000-0000-7000-0000-000000000000").text("type"))
                .endsWith("/unknown-check");
        String id = client.post(CHECKS, "{}").text("id");
        assertThat(client.post(CHECKS, "{}").text("type")).endsWith("/check-runs");
        assertThat(step(id, "{\"step\": \"HEARD\", \"outlet\": \"drum\"}").text("detail"))
                .contains("telephone");
        assertThat(step(id, "{\"step\": \"FINISHED\", \"outlet\": \"telephone\"}")
                        .status())
                .isEqualTo(422);
        assertThat(step(id, "{\"step\": \"FINISHED\"}").status()).isEqualTo(200);
        assertThat(step(id, "{\"step\": \"HEARD\", \"outlet\": \"telephone\"}").text("type"))
                .endsWith("/check-over");
    }
}
