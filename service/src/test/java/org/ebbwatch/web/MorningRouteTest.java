package org.ebbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.micronaut.context.annotation.Property;
import io.micronaut.json.tree.JsonNode;
import io.micronaut.runtime.server.EmbeddedServer;
import io.micronaut.test.extensions.junit5.annotation.MicronautTest;
import jakarta.inject.Inject;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The morning report and the rates of alarms, as the outside gets them. */
@MicronautTest(transactional = false)
@Property(name = "invented.rack", value = "yes")
class MorningRouteTest {
    @Inject
    private EmbeddedServer server;

    @Inject
    private InventedRack rack;

    @BeforeEach
    void a_night_with_a_bit_of_everything() {
        rack.show(InventedWorkshop.mixed());
    }

    private JsonNode report(String query) {
        Asked asked = Asked.get(server, "/api/v1/morning-report" + query);
        assertThat(asked.status()).isEqualTo(200);
        return asked.json();
    }

    @Test
    void it_tells_every_cell_in_its_place_and_what_it_waits_for() {
        JsonNode cell = report("").get("cells").get(4);

        assertThat(cell.get("tag").getStringValue()).isEqualTo("vacuum-6");
        assertThat(cell.get("channel").getIntValue()).isEqualTo(4);
        assertThat(cell.get("now").getStringValue()).isEqualTo("HELD");
        assertThat(cell.get("needsSomebody").getBooleanValue()).isTrue();
        assertThat(cell.get("next").get("task").getStringValue()).isEqualTo("DECIDE");
    }

    @Test
    void it_holds_the_text_that_a_mail_would() {
        assertThat(report("").get("text").getStringValue())
                .startsWith("Morning report, ")
                .contains("\nCells\n", "vacuum-6", "\nAlarms\n", "CUT_OFF", "\nTo do until tomorrow\n");
    }

    @Test
    void alarms_raised_since_the_time_that_is_asked_for_are_told() {
        Instant scanned = Instant.ofEpochMilli(InventedWorkshop.SCANNED_MILLIS);

        assertThat(report("?since=" + scanned.minusSeconds(3_600)).get("alarms").size())
                .isEqualTo(14);
        assertThat(report("?since=" + scanned.minusSeconds(60)).get("alarms").size())
                .isEqualTo(2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"yesterday", "2099-01-01T00:00:00Z", "2001-01-01T00:00:00Z", "2026-11-24"})
    void a_time_that_cannot_be_used_is_refused(String since) {
        Asked asked = Asked.get(server, "/api/v1/morning-report?since=" + since);

        assertThat(asked.status()).isEqualTo(400);
        assertThat(asked.json().get("detail").getStringValue()).contains(since, "last 31 days");
    }

    @Test
    void rates_are_held_against_the_usual_figures() {
        JsonNode rates = Asked.get(server, "/api/v1/alarms/rates").json();

        assertThat(rates.get("raised").getIntValue()).isEqualTo(12);
        assertThat(rates.get("busiestRaised").getIntValue()).isEqualTo(12);
        assertThat(rates.get("kinds").get(0).get("kind").getStringValue()).isEqualTo("SENSOR_FAULT");
        assertThat(rates.get("kinds").get(0).get("share").getDoubleValue()).isEqualTo(1);
        assertThat(rates.get("standing").getIntValue()).isEqualTo(2);
        JsonNode busiest = rates.get("guides").get(1);
        assertThat(busiest.get("most").getDoubleValue()).isEqualTo(10);
        assertThat(busiest.get("found").getDoubleValue()).isEqualTo(12);
        assertThat(busiest.get("kept").getBooleanValue()).isFalse();
        assertThat(Asked.get(server, "/api/v1/alarms/rates?hours=8784")
                        .json()
                        .get("raised")
                        .getIntValue())
                .isEqualTo(13);
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "8785", "many"})
    void hours_that_cannot_be_used_are_refused(String hours) {
        assertThat(Asked.get(server, "/api/v1/alarms/rates?hours=" + hours).status())
                .isEqualTo(400);
    }

    @Test
    void alarms_are_gauges_by_urgency() {
        assertThat(Asked.get(server, "/prometheus").body())
                .contains(
                        "ebbwatch_alarms_standing{urgency=\"RINGING\"} 2.0",
                        "ebbwatch_alarms_unacknowledged{urgency=\"RINGING\"} 1.0",
                        "ebbwatch_alarms_raised_hour{urgency=\"RINGING\"} 12.0",
                        "ebbwatch_alarms_raised_hour{urgency=\"DANGER\"} 0.0",
                        "ebbwatch_alarms_raised_ten_minutes{urgency=\"RINGING\"} 0.0");
    }
}
