package org.ebbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.micronaut.context.annotation.Property;
import io.micronaut.json.tree.JsonNode;
import io.micronaut.runtime.server.EmbeddedServer;
import io.micronaut.test.extensions.junit5.annotation.MicronautTest;
import jakarta.inject.Inject;
import org.ebbwatch.alarm.book.AlarmKind;
import org.junit.jupiter.api.Test;

@MicronautTest(transactional = false)
@Property(name = "invented.rack", value = "yes")
class AlarmRoutesTest {
    @Inject
    private EmbeddedServer server;

    private JsonNode answer() {
        return Asked.get(server, "/api/v1/alarms").json();
    }

    @Test
    void an_alarm_says_what_to_do_and_where_to_read_up_its_cause() {
        JsonNode alarm = answer().get("alarms").get(0);

        assertThat(alarm.get("kind").getStringValue()).isEqualTo("CUT_OFF");
        assertThat(alarm.get("urgency").getStringValue()).isEqualTo("RINGING");
        assertThat(alarm.get("state").getStringValue()).isEqualTo("UNACKNOWLEDGED");
        assertThat(alarm.get("toDo").getStringValue()).startsWith("Treat it as a full cell.");
        assertThat(alarm.get("cause").getStringValue()).isEqualTo("Collapsed to 0.021 V.");
        assertThat(alarm.get("passageId").getStringValue())
                .isEqualTo(InventedWorkshop.id(5).toString());
        assertThat(alarm.get("tags").get(0).getStringValue()).isEqualTo("vacuum-6");
        assertThat(alarm.get("channel").getIntValue()).isEqualTo(4);
        assertThat(alarm.get("eventMillis").getLongValue()).isEqualTo(88_200_000);
        assertThat(alarm.get("journalSequence").getLongValue()).isEqualTo(91);
        assertThat(alarm.get("raisedAt").getStringValue()).isEqualTo("2026-11-25T03:12:44.120Z");
        assertThat(alarm.get("coveredUntil").isNull()).isTrue();
        assertThat(alarm.get("allowed").get(0).getStringValue()).isEqualTo("ACKNOWLEDGED");
        assertThat(alarm.get("allowed").get(1).getStringValue()).isEqualTo("SHELVED");
    }

    @Test
    void an_alarm_put_away_says_by_whom_and_until_when_and_one_on_no_cell_has_no_passage() {
        JsonNode alarm = answer().get("alarms").get(1);

        assertThat(alarm.get("cover").getStringValue()).isEqualTo("SHELVED");
        assertThat(alarm.get("coveredBy").getStringValue()).isEqualTo("Anna");
        assertThat(alarm.get("coverReason").getStringValue()).isEqualTo("a larger disk is on its way");
        assertThat(alarm.get("coveredUntil").getStringValue()).isEqualTo("2026-11-25T04:12:44.120Z");
        for (String missing : new String[] {"passageId", "channel", "journalSequence"}) {
            assertThat(alarm.get(missing).isNull()).as(missing).isTrue();
        }
    }

    @Test
    void one_alarm_comes_with_the_tag_it_can_be_acted_on_by() {
        Asked alarm = Asked.get(server, "/api/v1/alarms/" + InventedAlarms.id(AlarmKind.STORAGE_FAULT));

        assertThat(alarm.json().get("kind").getStringValue()).isEqualTo("STORAGE_FAULT");
        assertThat(alarm.json().get("sequence").getLongValue()).isEqualTo(4);
        assertThat(alarm.header("ETag")).isEqualTo("\"4\"");
    }

    @Test
    void an_alarm_that_is_not_in_the_book_is_not_found() {
        Asked alarm = Asked.get(server, "/api/v1/alarms/" + InventedWorkshop.id(5));

        assertThat(alarm.status()).isEqualTo(404);
        assertThat(alarm.json().get("type").getStringValue()).isEqualTo("/api/v1/problems/unknown-alarm");
        assertThat(alarm.json().get("detail").getStringValue())
                .contains(InventedWorkshop.id(5).toString());
    }

    @Test
    void an_outlet_says_what_waits_and_why() {
        JsonNode outlet = answer().get("outlets").get(0);

        assertThat(outlet.get("name").getStringValue()).isEqualTo("webhook");
        assertThat(outlet.get("pending").getIntValue()).isEqualTo(3);
        assertThat(outlet.get("unwanted").getIntValue()).isEqualTo(1);
        assertThat(outlet.get("failures").getIntValue()).isEqualTo(7);
        assertThat(outlet.get("lastError").getStringValue()).isEqualTo("alarms.example answered 503");
        assertThat(outlet.get("lastSuccessAt").isNull()).isTrue();
    }
}
