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
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@MicronautTest(transactional = false)
@Property(name = "invented.rack", value = "yes")
class PassageRoutesTest {
    @Inject
    private EmbeddedServer server;

    @Inject
    private InventedRack rack;

    @BeforeEach
    void a_night_with_a_bit_of_everything() {
        rack.show(InventedWorkshop.mixed());
    }

    @Test
    void every_passage_is_listed_over_or_not() {
        assertThat(Asked.get(server, "/api/v1/passages").json().size()).isEqualTo(11);
    }

    @ParameterizedTest
    @CsvSource({"DRAIN, 4", "REST, 3", "TIE_OFF, 1", "HELD, 1", "RELEASED, 1", "CHECK_IN, 0"})
    void passages_can_be_asked_for_by_phase(String phase, int count) {
        JsonNode passages = Asked.get(server, "/api/v1/passages?phase=" + phase).json();

        assertThat(passages.size()).isEqualTo(count);
        passages.values()
                .forEach(it -> assertThat(it.get("phase").getStringValue()).isEqualTo(phase));
    }

    @Test
    void one_passage_shows_its_findings_what_is_allowed_and_its_past() {
        JsonNode answer =
                Asked.get(server, "/api/v1/passages/" + InventedWorkshop.id(7)).json();

        JsonNode passage = answer.get("passage");
        assertThat(passage.get("tag").getStringValue()).isEqualTo("speaker-7");
        assertThat(passage.get("findings").get(0).get("kind").getStringValue()).isEqualTo("WARMING");
        assertThat(passage.get("findings").get(1).get("kind").getStringValue()).isEqualTo("STALLED");
        assertThat(passage.get("findings").get(1).get("limit").isNull()).isTrue();
        assertThat(passage.get("ampereHours").getDoubleValue()).isEqualTo(1.8421);
        assertThat(answer.get("allowed").get(0).getStringValue()).isEqualTo("SPARK");
        assertThat(answer.get("allowed").get(1).getStringValue()).isEqualTo("WITHDRAW");
        assertThat(answer.get("past").get(0).get("what").getStringValue()).isEqualTo("CHECK_IN");
        assertThat(answer.get("past").get(1).get("kind").getStringValue()).isEqualTo("PHASE");
    }

    @Test
    void the_etag_of_a_passage_is_the_sequence_it_shows() {
        Asked answer = Asked.get(server, "/api/v1/passages/" + InventedWorkshop.id(7));

        assertThat(answer.header("ETag")).isEqualTo("\"47\"");
        assertThat(answer.json().get("passage").get("sequence").getLongValue()).isEqualTo(47);
    }

    @Test
    void a_load_that_seems_elsewhere_is_asked_about() {
        JsonNode passage = Asked.get(server, "/api/v1/passages/" + InventedWorkshop.id(8))
                .json()
                .get("passage");

        assertThat(passage.get("switched").getBooleanValue()).isFalse();
        assertThat(passage.get("seems").get("what").getStringValue()).isEqualTo("SEEMS_OFF");
        assertThat(passage.get("seems").get("words").getStringValue()).contains("say so");
    }

    @Test
    void a_passage_that_is_over_can_still_be_looked_at_and_allows_nothing() {
        JsonNode answer =
                Asked.get(server, "/api/v1/passages/" + InventedWorkshop.id(10)).json();

        assertThat(answer.get("passage").get("phase").getStringValue()).isEqualTo("RELEASED");
        assertThat(answer.get("allowed").isArray()).isTrue();
        assertThat(answer.get("allowed").size()).isZero();
    }

    private JsonNode closed(String query) {
        return Asked.get(server, "/api/v1/passages/closed" + query).json();
    }

    @Test
    void passages_that_are_over_come_newest_first_fifty_at_a_time() {
        JsonNode page = closed("");

        assertThat(page.get("passages").size()).isEqualTo(50);
        JsonNode newest = page.get("passages").get(0);
        assertThat(newest.get("tag").getStringValue()).isEqualTo("old-250");
        assertThat(newest.get("phase").getStringValue()).isEqualTo("WITHDRAWN");
        assertThat(newest.get("reason").getStringValue()).isEqualTo("withdrawn by a person");
        assertThat(newest.get("openedEventMillis").getLongValue()).isEqualTo(250_000);
        assertThat(newest.get("closedEventMillis").getLongValue()).isEqualTo(250_900);
        assertThat(newest.get("openedAt").getStringValue()).isEqualTo("2026-11-25T03:12:44.120Z");
        assertThat(page.get("passages").get(49).get("tag").getStringValue()).isEqualTo("old-201");
    }

    @Test
    void one_page_leads_to_the_next_until_there_is_none() {
        List<String> tags = new ArrayList<>();
        String query = "?limit=100";
        while (!query.isEmpty()) {
            JsonNode page = closed(query);
            page.get("passages")
                    .values()
                    .forEach(each -> tags.add(each.get("tag").getStringValue()));
            query = page.get("next").isNull()
                    ? ""
                    : "?limit=100&before=" + page.get("next").getStringValue();
        }

        assertThat(tags)
                .hasSize(250)
                .doesNotHaveDuplicates()
                .startsWith("old-250")
                .endsWith("old-1");
    }

    @Test
    void a_last_page_that_is_just_full_leads_nowhere() {
        JsonNode last = closed("?limit=50&before=01931e00-0000-7000-8000-000000000051");

        assertThat(last.get("passages").size()).isEqualTo(50);
        assertThat(last.get("next").isNull()).isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"?limit=0", "?limit=201", "?limit=-1", "?limit=many", "?before=kite", "?after=1"})
    void a_page_that_cannot_be_is_refused(String query) {
        Asked answer = Asked.get(server, "/api/v1/passages/closed" + query);

        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.json().get("type").getStringValue()).isEqualTo("/api/v1/problems/bad-parameter");
    }

    @Test
    void a_trace_comes_in_columns_of_one_length_with_null_where_nothing_was_read() {
        JsonNode trace = Asked.get(server, "/api/v1/passages/" + InventedWorkshop.id(1) + "/trace?points=12")
                .json();

        for (String column : new String[] {"eventMillis", "volts", "celsius", "loadApplied"}) {
            assertThat(trace.get(column).size()).as(column).isEqualTo(12);
        }
        assertThat(trace.get("volts").get(2).getDoubleValue()).isEqualTo(3.898);
        assertThat(trace.get("volts").get(3).isNull()).isTrue();
        assertThat(trace.get("celsius").get(0).isNull()).isTrue();
        assertThat(trace.get("loadApplied").get(6).getBooleanValue()).isTrue();
        assertThat(trace.get("eventMillis").get(11).getLongValue()).isEqualTo(11_000);
    }

    @Test
    void a_trace_has_a_thousand_points_unless_others_are_asked_for() {
        JsonNode trace = Asked.get(server, "/api/v1/passages/" + InventedWorkshop.id(1) + "/trace")
                .json();

        assertThat(trace.get("volts").size()).isEqualTo(1000);
    }
}
