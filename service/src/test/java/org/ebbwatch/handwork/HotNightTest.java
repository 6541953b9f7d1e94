package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import io.micronaut.json.JsonMapper;
import io.micronaut.json.tree.JsonNode;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.ebbwatch.acquire.SystemHostClock;
import org.ebbwatch.alarm.outlet.WebhookOutlet;
import org.ebbwatch.alarm.outlet.WebhookSettings;
import org.ebbwatch.handwork.Client.Answer;
import org.ebbwatch.handwork.Listening.Told;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Trigger;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.ebbwatch.store.AlarmStepRow;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A night in which a cell gets hot: what rings, what a person does about it, and when it is over. */
class HotNightTest {
    private static final long MINUTE = 60_000;
    private static final String CHECK_IN =
            """
            {"board": "bench", "channel": 0, "tag": "A-17", "chemistry": "nmc", "ratedAmpereHours": 2.0,
             "loadOhms": 22, "switched": true}
            """;

    @TempDir
    private Path records;

    private final List<JsonNode> rung = Collections.synchronizedList(new ArrayList<>());
    private HttpServer receiver;
    private Place place;
    private Client client;
    private String passage;

    @BeforeEach
    void a_cell_is_draining_and_somebody_has_a_telephone() throws IOException {
        receiver = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        receiver.createContext("/", this::ring);
        receiver.start();
        String hook = "http://localhost:" + receiver.getAddress().getPort() + "/hook";
        BoardSpec board = BoardSpec.build(
                        "EB-1",
                        List.of(
                                ChannelSpec.switched(
                                        CellSpec.build("A-17", NMC, 2.0).done(), 22),
                                ChannelSpec.empty(22)))
                .thermometers(true, false, 0, false)
                .done();
        var webhook = new WebhookOutlet("webhook", new WebhookSettings(hook, Map.of()), new SystemHostClock());
        place = Place.of(QuietRack.of(board, records, List.of(webhook)), records);
        client = new Client(place);
        passage = client.post("/api/v1/passages", CHECK_IN).text("passageId");
        place.rack().pass(2 * MINUTE);
        act("PUT_ON");
        place.rack().pass(10 * MINUTE);
        assertThat(alarms().size()).isZero();
    }

    @AfterEach
    void close() {
        place.close();
        receiver.stop(0);
    }

    private void ring(HttpExchange exchange) throws IOException {
        String body = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
        rung.add(JsonMapper.createDefault().readValue(body, JsonNode.class));
        exchange.sendResponseHeaders(204, -1);
        exchange.close();
    }

    private Answer act(String act) {
        Answer answer = client.post("/api/v1/passages/" + passage + "/acts", "{\"act\": \"" + act + "\"}");
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
        return answer;
    }

    private JsonNode alarms() {
        return client.get("/api/v1/alarms").json().get("alarms");
    }

    private JsonNode hot() {
        for (JsonNode alarm : alarms().values()) {
            if (alarm.get("kind").getStringValue().equals("HOT")) {
                return alarm;
            }
        }
        throw new AssertionError("no alarm HOT: " + client.get("/api/v1/alarms").body());
    }

    private Answer step(String id, String body) {
        return client.post("/api/v1/alarms/" + id + "/steps", body);
    }

    private List<String> rungAbout(String kind) {
        place.rack().deliver();
        return rung.stream()
                .filter(message -> message.get("kind").getStringValue().equals(kind))
                .map(message -> message.get("step").getStringValue()
                        + (message.get("rings").getBooleanValue() ? " rings" : ""))
                .toList();
    }

    /** The steps of HOT among what was told live, up to this one. */
    private static List<String> toldLive(Listening listening, String last) throws IOException {
        List<String> told = new ArrayList<>();
        while (told.isEmpty() || !told.get(told.size() - 1).equals(last)) {
            Told each = listening.next();
            JsonNode data = JsonMapper.createDefault().readValue(each.data(), JsonNode.class);
            if (each.name().equals("happening")
                    && data.get("kind").getStringValue().equals("ALARM")
                    && data.get("line").getStringValue().startsWith("HOT ")) {
                assertThat(data.get("alarmId").getStringValue()).isNotEmpty();
                assertThat(data.get("sequence").getLongValue()).isEqualTo(told.size() + 1);
                told.add(data.get("what").getStringValue());
            }
        }
        return told;
    }

    @Test
    void hot_rings_is_acknowledged_cools_returns_stays_latched_and_is_reset() throws IOException {
        try (var listening = new Listening(place)) {
            place.rack()
                    .hands()
                    .addFault(Fault.on(0, FaultKind.WARMING, Trigger.at(0))
                            .lasting(20 * MINUTE)
                            .with(Map.of("watts", 12.0, "riseMinutes", 1.0)));
            place.rack().pass(25 * MINUTE);

            String id = hot().get("id").getStringValue();
            assertThat(hot().get("state").getStringValue()).isEqualTo("UNACKNOWLEDGED");
            assertThat(hot().get("toDo").getStringValue()).startsWith("Keep away.");
            assertThat(rungAbout("HOT")).containsExactly("RAISED rings");

            Answer shelved = step(id, "{\"step\": \"SHELVED\", \"minutes\": 30, \"reason\": \"let me sleep\"}");
            assertThat(shelved.status()).isEqualTo(409);
            assertThat(shelved.text("detail")).contains("HOT stays in view until it is dealt with.");
            Answer reset = step(id, "{\"step\": \"RESET\"}");
            assertThat(reset.status()).isEqualTo(409);
            assertThat(reset.text("detail")).contains("Its condition still stands");

            Answer known = step(id, "{\"step\": \"ACKNOWLEDGED\", \"by\": \"Anna\"}");
            assertThat(known.status()).as(known.body()).isEqualTo(200);
            assertThat(known.text("state")).isEqualTo("ACKNOWLEDGED");
            assertThat(step(id, "{\"step\": \"RESET\"}").text("detail")).contains("Its condition still stands");

            place.rack().pass(5 * 60 * MINUTE);
            assertThat(hot().get("state").getStringValue())
                    .as("it cooled long ago, but nobody has looked at the cell yet")
                    .isEqualTo("ACKNOWLEDGED");
            act("WITHDRAW");
            assertThat(hot().get("state").getStringValue()).isEqualTo("LATCHED_ACKNOWLEDGED");
            assertThat(hot().get("allowed").get(0).getStringValue()).isEqualTo("RESET");

            Answer over = step(id, "{\"step\": \"RESET\", \"by\": \"Ben\"}");
            assertThat(over.status()).as(over.body()).isEqualTo(200);
            assertThat(over.text("state")).isEqualTo("NORMAL");
            assertThat(client.get("/api/v1/alarms/" + id).status()).isEqualTo(404);
            assertThat(rungAbout("HOT")).containsExactly("RAISED rings", "ACKNOWLEDGED", "RETURNED", "RESET");
            assertThat(place.rack().steps(UUID.fromString(id)))
                    .extracting(AlarmStepRow::step, AlarmStepRow::who)
                    .containsExactly(
                            tuple("RAISED", ""),
                            tuple("ACKNOWLEDGED", "Anna"),
                            tuple("RETURNED", ""),
                            tuple("RESET", "Ben"));
            assertThat(toldLive(listening, "RESET")).containsExactly("RAISED", "ACKNOWLEDGED", "RETURNED", "RESET");
        }
    }
}
