package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import io.micronaut.json.tree.JsonNode;
import java.nio.file.Path;
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

/** Calibrating over REST. */
class CalibrationRoutesTest {
    private static final String CALIBRATIONS = "/api/v1/calibrations";
    private static final String BEGIN =
            "{\"board\": \"bench\", \"channel\": 0, \"meter\": \"bench meter\", \"meterPercent\": 0.05,"
                    + " \"meterVolts\": 0.0001, \"by\": \"Anna\"}";

    @TempDir
    Path records;

    private QuietRack rack;
    private Place place;
    private Client client;

    @BeforeEach
    void serve() {
        rack = QuietRack.of(
                BoardSpec.build(
                                "EB-1",
                                List.of(
                                        ChannelSpec.byHand(
                                                CellSpec.build("A", NMC, 2.0).done(), 22),
                                        ChannelSpec.byHand(
                                                CellSpec.build("B", NMC, 2.0).done(), 22)))
                        .thermometers(true, false, 0, false)
                        .done(),
                records);
        place = Place.of(rack, records);
        client = new Client(place);
    }

    @AfterEach
    void close() {
        place.close();
    }

    private Answer step(String id, String body) {
        return client.post(CALIBRATIONS + '/' + id + "/steps", body, Map.of("If-Match", ""));
    }

    private String begin() {
        Answer begun = client.post(CALIBRATIONS, BEGIN);
        assertThat(begun.status()).as(begun.body()).isEqualTo(200);
        return begun.json().get("running").get("id").getStringValue();
    }

    private String calibrate() {
        String id = begin();
        rack.feed(0.010, 10);
        assertThat(step(id, "{\"step\": \"SHORTED\"}").status()).isEqualTo(200);
        rack.feed(0.510, 10);
        assertThat(step(id, "{\"step\": \"LOW\", \"volts\": 0.5}").status()).isEqualTo(200);
        rack.feed(4.010, 10);
        Answer found = step(id, "{\"step\": \"HIGH\", \"volts\": 4}");
        assertThat(found.json().get("running").get("found").get("offsetVolts").getDoubleValue())
                .isBetween(-0.0105, -0.0095);
        Answer kept = step(id, "{\"step\": \"KEPT\"}");
        assertThat(kept.json().get("kept").get("current").getBooleanValue())
                .as(kept.body())
                .isTrue();
        return id;
    }

    private JsonNode channel() {
        return client.get("/api/v1/channels").json().get(0);
    }

    @Test
    void a_channel_is_calibrated_step_by_step_and_the_page_is_told_when() {
        calibrate();
        rack.feed(1.010, 1);
        assertThat(channel().get("volts").getDoubleValue()).isBetween(0.9995, 1.0005);
        assertThat(channel().get("calibratedAt").getStringValue()).startsWith("2026-11-25T");
        assertThat(channel().get("calibrationOld").getBooleanValue()).isFalse();
        JsonNode all = client.get(CALIBRATIONS).json();
        assertThat(all.get("calibrations").size()).isEqualTo(1);
        assertThat(all.get("running").isNull()).isTrue();
    }

    @Test
    void one_that_was_wrong_is_withdrawn_with_a_reason_and_stays_in_the_history() {
        String id = calibrate();
        assertThat(step(id, "{\"step\": \"WITHDRAWN\"}").status()).isEqualTo(422);
        Answer withdrawn = step(id, "{\"step\": \"WITHDRAWN\", \"by\": \"Ben\", \"reason\": \"Wrong range.\"}");
        assertThat(withdrawn.json().get("kept").get("withdrawnReason").getStringValue())
                .isEqualTo("Wrong range.");
        rack.feed(1.010, 1);
        assertThat(channel().get("volts").getDoubleValue()).isBetween(1.0095, 1.0105);
        assertThat(client.get(CALIBRATIONS).json().get("calibrations").size()).isEqualTo(1);
    }

    @Test
    void what_makes_no_sense_is_refused_with_what_to_do() {
        String id = begin();
        Answer early = step(id, "{\"step\": \"LOW\", \"volts\": 0.5}");
        assertThat(early.text("type")).endsWith("/not-ready");
        rack.feed(3.7, 10);
        Answer cell = step(id, "{\"step\": \"SHORTED\"}");
        assertThat(cell.status()).isEqualTo(422);
        assertThat(cell.text("type")).endsWith("/no-sense");
        assertThat(cell.text("detail")).contains("Never short a cell");
        assertThat(client.post(CALIBRATIONS, BEGIN).text("type")).endsWith("/calibration-runs");
        assertThat(step(id, "{\"step\": \"SHORTED\", \"volts\": 0}").status()).isEqualTo(422);
        assertThat(step(id, "{\"step\": \"GIVEN_UP\"}").status()).isEqualTo(200);
        assertThat(step(id, "{\"step\": \"SHORTED\"}").text("type")).endsWith("/unknown-calibration");
    }

    @Test
    void a_channel_with_a_cell_on_it_another_board_and_an_exact_meter_are_refused() {
        String body = "{\"board\": \"bench\", \"channel\": 0, \"tag\": \"A-17\", \"chemistry\": \"nmc\","
                + " \"ratedAmpereHours\": 2, \"loadOhms\": 22, \"switched\": false}";
        assertThat(client.post("/api/v1/passages", body).status()).isEqualTo(201);
        Answer taken = client.post(CALIBRATIONS, BEGIN);
        assertThat(taken.text("type")).endsWith("/taken");
        assertThat(taken.text("detail")).contains("A-17");
        assertThat(client.post(CALIBRATIONS, BEGIN.replace("bench\"", "shed\"")).status())
                .isEqualTo(422);
        assertThat(client.post(CALIBRATIONS, BEGIN.replace("0.05", "0").replace("0.0001", "0"))
                        .text("detail"))
                .contains("No meter is exact");
    }

    @Test
    void whoever_has_no_token_or_no_key_begins_nothing() {
        assertThat(client.post(CALIBRATIONS, BEGIN, Map.of("Authorization", "")).status())
                .isEqualTo(401);
        assertThat(client.post(CALIBRATIONS, BEGIN, Map.of("Idempotency-Key", ""))
                        .status())
                .isEqualTo(400);
    }

    @Test
    void the_line_to_a_board_is_told_with_it_and_as_metrics() {
        JsonNode line = client.get("/api/v1/boards").json().get(0).get("line");
        assertThat(line.get("frames").getLongValue()).isPositive();
        assertThat(line.get("crcErrors").getLongValue()).isZero();
        assertThat(client.get("/prometheus").body())
                .contains("ebbwatch_link_frames{board=\"bench\"}")
                .contains("ebbwatch_link_crc_errors{board=\"bench\"} 0.0")
                .contains("ebbwatch_link_round_trip_seconds{board=\"bench\"}");
    }
}
