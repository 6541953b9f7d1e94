package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import io.micronaut.json.tree.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
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

/** Passages that are over stay within reach, whenever the service was started last. */
class ClosedPassagesTest {
    private static final long MINUTE = 60_000;

    @TempDir
    private Path records;

    private Place place;
    private Client client;
    private int keys;

    @BeforeEach
    void a_bench() {
        BoardSpec board = BoardSpec.build(
                        "EB-1",
                        List.of(ChannelSpec.switched(
                                CellSpec.build("A", NMC, 2.0).done(), 22)))
                .done();
        place = Place.of(QuietRack.of(board, records), records);
        client = new Client(place);
    }

    @AfterEach
    void close() {
        place.close();
    }

    private void restart() {
        place.close();
        place = Place.of(place.rack().again(records), records);
        client = new Client(place);
    }

    /** A key that no run of the service has seen. */
    private Map<String, String> freshKey() {
        return Map.of("Idempotency-Key", "closed-passages-" + ++keys);
    }

    private String checkedIn(String tag) {
        Answer opened = client.post(
                "/api/v1/passages",
                "{\"board\": \"bench\", \"channel\": 0, \"tag\": \"" + tag
                        + "\", \"chemistry\": \"nmc\", \"ratedAmpereHours\": 2.0, \"loadOhms\": 22, \"switched\": true}",
                freshKey());
        assertThat(opened.status()).as(opened.body()).isEqualTo(201);
        place.rack().pass(2 * MINUTE);
        return opened.text("passageId");
    }

    private String withdrawn(String tag) {
        String id = checkedIn(tag);
        assertThat(client.post("/api/v1/passages/" + id + "/acts", "{\"act\": \"WITHDRAW\"}", freshKey())
                        .status())
                .isEqualTo(200);
        return id;
    }

    private List<String> closed(String query) {
        List<String> tags = new ArrayList<>();
        JsonNode page = client.get("/api/v1/passages/closed" + query).json();
        page.get("passages").values().forEach(each -> tags.add(each.get("tag").getStringValue()));
        return tags;
    }

    private List<Long> traceMillis(String id) {
        List<Long> millis = new ArrayList<>();
        client.get("/api/v1/passages/" + id + "/trace?points=10000")
                .json()
                .get("eventMillis")
                .values()
                .forEach(each -> millis.add(each.getLongValue()));
        return millis;
    }

    @Test
    void those_of_earlier_runs_are_told_too_newest_first_and_open_ones_are_not() {
        withdrawn("first");
        withdrawn("second");
        restart();
        String third = withdrawn("third");
        checkedIn("open");

        assertThat(closed("")).containsExactly("third", "second", "first");
        assertThat(closed("?limit=2")).containsExactly("third", "second");
        assertThat(closed("?before=" + third)).containsExactly("second", "first");
        JsonNode first =
                client.get("/api/v1/passages/closed").json().get("passages").get(2);
        assertThat(first.get("phase").getStringValue()).isEqualTo("WITHDRAWN");
        assertThat(first.get("board").getStringValue()).isEqualTo("bench");
        assertThat(first.get("closedEventMillis").getLongValue())
                .isGreaterThan(first.get("openedEventMillis").getLongValue());
    }

    @Test
    void a_trace_ends_with_its_passage_before_and_after_a_restart() {
        String id = withdrawn("first");
        long end = client.get("/api/v1/passages/closed")
                .json()
                .get("passages")
                .get(0)
                .get("closedEventMillis")
                .getLongValue();
        place.rack().pass(30 * MINUTE);

        List<Long> before = traceMillis(id);
        assertThat(before).hasSizeGreaterThan(10).allMatch(millis -> millis <= end);
        restart();
        assertThat(traceMillis(id)).isEqualTo(before);
    }

    @Test
    void receipts_older_than_thirty_days_are_forgotten_when_the_service_starts() {
        String id = checkedIn("first");
        Map<String, String> same = Map.of("Idempotency-Key", "one-and-the-same", "If-Match", client.tag(id));
        String path = "/api/v1/passages/" + id + "/announcements";
        String body = "{\"kind\": \"HAND_WORK\", \"minutes\": 5}";
        assertThat(client.post(path, body, same).status()).isEqualTo(200);

        restart();
        place.rack().beginRun(QuietRack.BEGIN_WALL_MILLIS + 30L * 86_400_000);
        assertThat(client.post(path, body, same).status()).as("still known").isEqualTo(200);

        restart();
        place.rack().beginRun(QuietRack.BEGIN_WALL_MILLIS + 31L * 86_400_000);
        restart();
        assertThat(client.post(path, body, same).status())
                .as("forgotten, and stopped by what was seen")
                .isEqualTo(412);
    }
}
