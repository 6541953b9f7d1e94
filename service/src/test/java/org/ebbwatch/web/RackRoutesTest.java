package org.ebbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.micronaut.context.annotation.Property;
import io.micronaut.json.tree.JsonNode;
import io.micronaut.runtime.server.EmbeddedServer;
import io.micronaut.test.extensions.junit5.annotation.MicronautTest;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@MicronautTest(transactional = false)
@Property(name = "invented.rack", value = "yes")
class RackRoutesTest {
    @Inject
    private EmbeddedServer server;

    @Inject
    private InventedRack rack;

    @BeforeEach
    void a_night_with_a_bit_of_everything() {
        rack.show(InventedWorkshop.mixed());
    }

    @Test
    void the_rack_says_when_it_speaks_and_what_is_old() {
        JsonNode answer = Asked.get(server, "/api/v1/rack").json();

        assertThat(answer.get("at").getStringValue()).isEqualTo("2026-11-25T03:12:44.520Z");
        assertThat(answer.get("staleAfterSeconds").getIntValue()).isEqualTo(6);
        assertThat(answer.get("simulated").getBooleanValue()).isTrue();
        JsonNode bench = answer.get("boards").get(0);
        assertThat(bench.get("ageSeconds").getDoubleValue()).isEqualTo(0.4);
        assertThat(bench.get("stale").getBooleanValue()).isFalse();
        assertThat(bench.get("lastScanAt").getStringValue()).isEqualTo("2026-11-25T03:12:44.120Z");
        assertThat(bench.get("ambientCelsius").getDoubleValue()).isEqualTo(21.4);
        assertThat(bench.get("simulated").getBooleanValue()).isFalse();
        JsonNode shed = answer.get("boards").get(1);
        assertThat(shed.get("ageSeconds").getDoubleValue()).isEqualTo(605.4);
        assertThat(shed.get("stale").getBooleanValue()).isTrue();
        assertThat(shed.get("ambientCelsius").isNull()).isTrue();
        assertThat(shed.get("speed").getIntValue()).isEqualTo(60);
    }

    @Test
    void the_rack_leaves_out_what_is_over_and_counts_it() {
        JsonNode answer = Asked.get(server, "/api/v1/rack").json();

        assertThat(tags(answer.get("passages"))).hasSize(9).doesNotContain("radio-4", "toy-9");
        assertThat(answer.get("released").getIntValue()).isEqualTo(1);
        assertThat(answer.get("withdrawn").getIntValue()).isEqualTo(1);
    }

    @Test
    void a_passage_in_short_says_what_it_waits_for_and_how_much_it_needs_a_person() {
        JsonNode passages = Asked.get(server, "/api/v1/rack").json().get("passages");

        assertThat(attentions(passages))
                .containsExactly("NONE", "NONE", "NONE", "NONE", "RINGING", "WORK", "RINGING", "RINGING", "RINGING");
        JsonNode waits = passages.get(5).get("waitsFor");
        assertThat(waits.size()).isEqualTo(1);
        assertThat(waits.get(0).get("wish").getStringValue()).isEqualTo("ASK_TIE_OFF");
        assertThat(waits.get(0).get("words").getStringValue()).startsWith("Bond the leads.");
        assertThat(passages.get(1).get("remainingMillis").getLongValue()).isEqualTo(22_320_000);
    }

    @Test
    void boards_show_link_and_contacts() {
        JsonNode boards = Asked.get(server, "/api/v1/boards").json();

        assertThat(boards.size()).isEqualTo(2);
        assertThat(boards.get(1).get("link").getStringValue()).isEqualTo("LOST");
        assertThat(boards.get(1).get("detail").getStringValue()).contains("Plug the cable in");
        assertThat(boards.get(0).get("contactsClosed").get(0).getIntValue()).isZero();
        assertThat(boards.get(0).get("contactsClosed").get(1).getIntValue()).isEqualTo(2);
        assertThat(boards.get(0).get("contactsClosed").size()).isEqualTo(2);
    }

    @Test
    void a_channel_shows_its_latest_reading_and_the_passage_that_is_on_it() {
        JsonNode channels = Asked.get(server, "/api/v1/channels").json();

        assertThat(channels.size()).isEqualTo(13);
        JsonNode first = channels.get(0);
        assertThat(first.get("volts").getDoubleValue()).isEqualTo(3.4118);
        assertThat(first.get("expandedVolts").getDoubleValue()).isEqualTo(0.0026);
        assertThat(first.get("overAmbientKelvin").getDoubleValue()).isEqualTo(5.0);
        assertThat(first.get("passageId").getStringValue())
                .isEqualTo(InventedWorkshop.id(1).toString());
        assertThat(channels.get(7).get("passageId").isNull()).isTrue();
    }

    @Test
    void what_is_not_a_number_is_null_and_still_there() {
        JsonNode empty = Asked.get(server, "/api/v1/channels").json().get(7);

        for (String missing : List.of("volts", "celsius", "overAmbientKelvin")) {
            assertThat(empty.get(missing)).as(missing).isNotNull();
            assertThat(empty.get(missing).isNull()).as(missing).isTrue();
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/api/v1/rack",
                "/api/v1/boards",
                "/api/v1/channels",
                "/api/v1/passages",
                "/api/v1/passages/01931f00-0000-7000-8000-000000000007",
                "/api/v1/passages/01931f00-0000-7000-8000-000000000007/trace",
                "/api/v1/findings"
            })
    void no_answer_carries_a_number_that_json_does_not_know(String path) {
        Asked answer = Asked.get(server, path);

        assertThat(answer.status()).isEqualTo(200);
        assertThat(answer.header("Content-Type")).startsWith("application/json");
        assertThat(answer.body()).doesNotContain("NaN").doesNotContain("Infinity");
    }

    @Test
    void findings_come_urgent_first_and_oldest_first_among_equals() {
        JsonNode findings = Asked.get(server, "/api/v1/findings").json();

        List<String> kinds = new ArrayList<>();
        findings.values().forEach(it -> kinds.add(it.get("finding").get("kind").getStringValue()));
        assertThat(kinds).containsExactly("CUT_OFF", "WARMING", "SILENT", "SILENT", "STALLED");
        assertThat(findings.get(0).get("tag").getStringValue()).isEqualTo("vacuum-6");
        assertThat(findings.get(0).get("finding").get("latched").getBooleanValue())
                .isTrue();
        assertThat(findings.get(2).get("finding").get("seen").isNull()).isTrue();
    }

    private static List<String> tags(JsonNode passages) {
        List<String> tags = new ArrayList<>();
        passages.values().forEach(passage -> tags.add(passage.get("tag").getStringValue()));
        return tags;
    }

    private static List<String> attentions(JsonNode passages) {
        List<String> attentions = new ArrayList<>();
        passages.values()
                .forEach(passage -> attentions.add(passage.get("attention").getStringValue()));
        return attentions;
    }
}
