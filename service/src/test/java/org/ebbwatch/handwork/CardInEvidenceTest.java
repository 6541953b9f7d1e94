package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import io.micronaut.json.JsonMapper;
import io.micronaut.json.tree.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What was noted of a cell at the bench goes with it to whoever receives it. */
class CardInEvidenceTest {
    private static final String CHECK_IN =
            """
            {"board": "bench", "channel": 0, "tag": "A-17", "chemistry": "nmc", "ratedAmpereHours": 2.0,
             "loadOhms": 47, "switched": true, "procedure": "damaged"}
            """;

    @TempDir
    private Path records;

    private Place place;
    private Client client;

    @BeforeEach
    void a_cell_lies_on_the_bench() {
        BoardSpec board = BoardSpec.build(
                        "EB-1",
                        List.of(ChannelSpec.switched(
                                CellSpec.build("A-17", NMC, 2.0).done(), 47)))
                .done();
        place = Place.of(QuietRack.of(board, records), records);
        client = new Client(place);
    }

    @AfterEach
    void close() {
        place.close();
    }

    /** Checks the cell in, watches it for a while, takes it out, and reads the record of its bundle. */
    private JsonNode itemOfItsRecord() throws IOException {
        String id = client.post("/api/v1/passages", CHECK_IN).text("passageId");
        place.rack().pass(60_000);
        client.post("/api/v1/passages/" + id + "/acts", "{\"act\": \"WITHDRAW\"}");
        URI papers = URI.create(place.server().getURL() + "/api/v1/hand-over?passage=" + id);
        try (InputStream bundle = entry(papers.toURL().openStream(), ".ebb.zip");
                InputStream record = entry(bundle, "record.json")) {
            String text = new String(record.readAllBytes(), StandardCharsets.UTF_8);
            return JsonMapper.createDefault().readValue(text, JsonNode.class).get("item");
        }
    }

    private static InputStream entry(InputStream zip, String end) throws IOException {
        ZipInputStream entries = new ZipInputStream(zip, StandardCharsets.UTF_8);
        for (ZipEntry entry = entries.getNextEntry(); entry != null; entry = entries.getNextEntry()) {
            if (entry.getName().endsWith(end)) {
                return entries;
            }
        }
        throw new IOException("there is no " + end);
    }

    @Test
    void the_record_holds_what_the_card_says() throws IOException {
        client.post(
                "/api/v1/intakes",
                """
                {"tag": "A-17", "chemistry": "nmc", "cellsInSeries": 1, "ratedAmpereHours": 2.0, "condition": "SWOLLEN",
                 "protectionBoard": "REMOVED", "measuredVolts": 4.1, "massBeforeGrams": 45.2, "note": "=1+2 <b>puffed</b>",
                 "by": "Anna"}
                """);
        JsonNode intake = itemOfItsRecord().get("intake");

        assertThat(intake.get("condition").getStringValue()).isEqualTo("swollen");
        assertThat(intake.get("protectionBoard").getStringValue()).isEqualTo("REMOVED");
        assertThat(intake.get("measuredVolts").getDoubleValue()).isEqualTo(4.1);
        assertThat(intake.get("massGrams").getDoubleValue()).isEqualTo(45.2);
        assertThat(intake.get("note").getStringValue()).isEqualTo("=1+2 <b>puffed</b>");
        assertThat(intake.get("by").getStringValue()).isEqualTo("Anna");
    }

    @Test
    void a_cell_without_a_card_has_nothing_noted() throws IOException {
        assertThat(itemOfItsRecord().get("intake")).isNull();
    }
}
