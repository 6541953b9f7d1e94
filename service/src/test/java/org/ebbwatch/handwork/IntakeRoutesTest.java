package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;

import io.micronaut.json.JsonMapper;
import io.micronaut.json.tree.JsonNode;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import javax.imageio.ImageIO;
import org.ebbwatch.handwork.Client.Answer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Taking cells in over REST, and checking them in against their cards. */
class IntakeRoutesTest extends DeskBench {
    private static final String INTAKES = "/api/v1/intakes";

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

    private static String card(String more) {
        return """
                {"chemistry": "nmc", "cellsInSeries": 1, "ratedAmpereHours": 2.0, "condition": "INTACT",
                 "protectionBoard": "NONE", "measuredVolts": 4.1, %s}
                """
                .formatted(more);
    }

    private Answer takeIn(String more) {
        return client.post(INTAKES, card(more));
    }

    private Answer amend(String tag, String body) {
        return client.post(INTAKES + '/' + tag + "/amendments", body);
    }

    private static String quoted(String text) {
        try {
            return JsonMapper.createDefault().writeValueAsString(text);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private Answer checkIn(String tag, double ohms, String procedure) {
        return client.post(
                "/api/v1/passages",
                """
                {"board": "bench", "channel": 0, "tag": "%s", "chemistry": "nmc", "ratedAmpereHours": 2.0,
                 "loadOhms": %s, "switched": true, "procedure": "%s"}
                """
                        .formatted(tag, ohms, procedure));
    }

    private void refused(Answer answer, int status, String kind, String detail) {
        assertThat(answer.status()).as(answer.body()).isEqualTo(status);
        assertThat(answer.header("content-type")).isEqualTo("application/problem+json");
        assertThat(answer.text("type")).isEqualTo("/api/v1/problems/" + kind);
        assertThat(answer.text("detail")).contains(detail);
    }

    @Test
    void a_cell_is_taken_in_looked_up_and_checked_in() {
        Answer taken = takeIn("\"tag\": \"A 17\", \"by\": \"Anna\"");

        assertThat(taken.status()).as(taken.body()).isEqualTo(201);
        assertThat(taken.text("verdict")).isEqualTo("ADMITTED");
        assertThat(taken.header("location")).isEqualTo(INTAKES + "/A%2017");
        Answer read = client.get(taken.header("location"));
        assertThat(read.text("tag")).isEqualTo("A 17");
        assertThat(read.json().get("card").get("ratedAmpereHours").getDoubleValue())
                .isEqualTo(2.0);
        assertThat(read.header("etag")).isEqualTo("\"1\"").isEqualTo(taken.header("etag"));
        assertThat(checkIn("A 17", 22, "careful").status()).isEqualTo(201);
    }

    @Test
    void the_next_of_a_box_gets_its_number_and_the_label_of_the_last() {
        takeIn("\"tagPrefix\": \"box3\", \"origin\": \"shed\"");

        Answer next = client.post(
                INTAKES,
                "{\"tagPrefix\": \"box3\", \"likeLast\": true, \"condition\": \"SWOLLEN\", \"protectionBoard\": \"REMOVED\","
                        + " \"measuredVolts\": 3.6}");

        assertThat(next.text("tag")).isEqualTo("box3-002");
        assertThat(next.json().get("card").get("origin").getStringValue()).isEqualTo("shed");
        Answer page = client.get(INTAKES + "?limit=1");
        assertThat(page.text("next")).isEqualTo("box3-002");
        assertThat(client.get(INTAKES + "?limit=1&before=box3-002")
                        .json()
                        .get("intakes")
                        .size())
                .isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"CASING_TORN", "LEAKING", "SMELL_OF_SOLVENT", "WARM", "WET"})
    void a_cell_that_does_not_go_on_a_rack_has_a_card_with_the_caution_and_is_not_checked_in(String condition) {
        Answer taken = client.post(INTAKES, card("\"tag\": \"bad\"").replace("INTACT", condition));

        assertThat(taken.status()).as(taken.body()).isEqualTo(201);
        assertThat(taken.text("verdict")).isNotEqualTo("ADMITTED");
        JsonNode objection = taken.json().get("objections").get(0);
        assertThat(objection.get("toDo").getStringValue()).contains("local rules");
        refused(checkIn("bad", 22, "damaged"), 409, "not-admitted", "keeps it off the rack");
        assertThat(rack.view().passages()).isEmpty();
    }

    @Test
    void a_wet_cell_comes_back_when_it_is_dry_and_a_person_decides_and_a_torn_one_never() {
        takeIn("\"tag\": \"wet\"");
        amend("wet", "{\"condition\": \"WET\", \"reason\": \"rain\"}");
        refused(amend("wet", "{\"condition\": \"INTACT\"}"), 422, "bad-body", "reason");
        amend("wet", "{\"condition\": \"INTACT\", \"reason\": \"dry for two days, looked at\", \"by\": \"Anna\"}");
        assertThat(checkIn("wet", 22, "careful").status()).isEqualTo(201);

        takeIn("\"tag\": \"torn\"");
        amend("torn", "{\"condition\": \"CASING_TORN\", \"reason\": \"a slit at the seam\"}");
        refused(
                amend("torn", "{\"condition\": \"INTACT\", \"reason\": \"taped\"}"),
                409,
                "stays-out",
                "torn; that is not taken back");
    }

    @Test
    void the_check_in_has_to_fit_the_card() {
        takeIn("\"tag\": \"dent\"");
        amend("dent", "{\"condition\": \"DENTED\", \"reason\": \"fell\"}");
        refused(checkIn("dent", 47, "careful"), 409, "not-admitted", "procedure damaged");
        refused(checkIn("dent", 22, "damaged"), 409, "not-admitted", "41.0 ohm or more");
        assertThat(checkIn("dent", 47, "damaged").status()).isEqualTo(201);

        takeIn("\"tag\": \"big\"");
        amend("big", "{\"ratedAmpereHours\": 5.0, \"reason\": \"misread\"}");
        refused(checkIn("big", 22, "careful"), 409, "not-admitted", "its rating is 5.0 Ah");
        takeIn("\"tag\": \"iron\"");
        amend("iron", "{\"chemistry\": \"lfp\", \"measuredVolts\": 3.3, \"reason\": \"read the label\"}");
        refused(checkIn("iron", 22, "careful"), 409, "not-admitted", "its chemistry is lfp");
        takeIn("\"tag\": \"board\"");
        amend("board", "{\"protectionBoard\": \"PRESENT\", \"reason\": \"under the wrap\"}");
        refused(checkIn("board", 22, "careful"), 409, "not-admitted", "CUT_OFF");
    }

    @Test
    void a_cell_without_a_card_is_checked_in_as_ever() {
        assertThat(checkIn("nobody wrote", 22, "careful").status()).isEqualTo(201);
    }

    @Test
    void a_check_in_that_was_done_is_answered_again_whatever_was_written_since() {
        takeIn("\"tag\": \"A\"");
        Map<String, String> key = Map.of("Idempotency-Key", "check-in-of-a");
        String body =
                """
                {"board": "bench", "channel": 0, "tag": "A", "chemistry": "nmc", "ratedAmpereHours": 2.0, "loadOhms": 22,
                 "switched": true}
                """;
        assertThat(client.post("/api/v1/passages", body, key).status()).isEqualTo(201);
        amend("A", "{\"condition\": \"LEAKING\", \"reason\": \"on the rack\"}");

        assertThat(client.post("/api/v1/passages", body, key).status()).isEqualTo(201);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"condition\": \"FINE\"} | INTACT, UNKNOWN, SWOLLEN",
                "{\"chemistry\": \"lead\"} | nmc, nca, lco, lmo, lfp, unknown",
                "{\"cellsInSeries\": 0} | 1 to 100",
                "{\"ratedAmpereHours\": \"2\"} | 0.01 to 1000",
                "{\"measuredVolts\": 1e9} | -500 to 500",
                "{\"wieght\": 3} | massBeforeGrams",
                "{\"tag\": \"<b>x</b>\"} | letters, digits",
                "{\"tag\": \"=1+1\"} | letters, digits",
                "{\"tag\": \"a\", \"tagPrefix\": \"b\"} | cannot both",
                "{\"like\": \"a\", \"likeLast\": true} | cannot both",
                "{\"likeLast\": true} | no card yet",
                "{} | The field chemistry is missing"
            })
    void what_cannot_be_is_refused_with_what_can(String body, String takes) {
        refused(client.post(INTAKES, body), 422, "bad-body", takes);
        assertThat(client.get(INTAKES).json().get("intakes").size()).isZero();
    }

    @Test
    void volts_that_do_not_fit_are_refused_with_what_to_do() {
        refused(client.post(INTAKES, card("\"tag\": \"A\"").replace("4.1", "8.2")), 422, "bad-body", "8.2 V a cell");
        refused(client.post(INTAKES, card("\"tag\": \"A\"").replace("4.1", "1.5")), 422, "bad-body", "voltsExplained");
        refused(client.post(INTAKES, card("\"tag\": \"A\"").replace("4.1", "-3.7")), 422, "bad-body", "reversed");
    }

    @Test
    void whoever_has_no_token_no_key_or_an_old_card_writes_nothing() {
        assertThat(client.post(INTAKES, card("\"tag\": \"A\""), Map.of("Authorization", ""))
                        .status())
                .isEqualTo(401);
        assertThat(client.post(INTAKES, card("\"tag\": \"A\""), Map.of("Idempotency-Key", ""))
                        .status())
                .isEqualTo(400);
        takeIn("\"tag\": \"A\"");
        refused(takeIn("\"tag\": \"A\""), 409, "tag-taken", "already");
        amend("A", "{\"note\": \"first\"}");
        refused(
                client.post(INTAKES + "/A/amendments", "{\"note\": \"second\"}", Map.of("If-Match", "\"1\"")),
                412,
                "changed-since",
                "revision 1");
        refused(client.get(INTAKES + "/nobody"), 404, "unknown-card", "nobody");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<script>alert(1)</script>",
                "=HYPERLINK(\"http://x\")",
                "@SUM(A1)",
                "'; drop table intake; --",
                "\u202e\u0000x",
                "日本語 und µ"
            })
    void hostile_text_is_text(String note) {
        Answer taken = takeIn("\"tag\": \"A\", \"note\": " + quoted(note));

        assertThat(taken.status()).as(taken.body()).isEqualTo(201);
        assertThat(taken.header("content-type")).startsWith("application/json");
        String kept = client.get(INTAKES + "/A").json().get("card").get("note").getStringValue();
        assertThat(kept).isEqualTo(note.replaceAll("[\\p{C}\\p{Z}]+", " ").strip());
    }

    @Test
    void text_that_is_too_long_and_a_body_that_is_too_large_are_refused() {
        refused(takeIn("\"note\": " + quoted("x".repeat(1_001))), 422, "bad-body", "1 to 1000");
        refused(takeIn("\"note\": " + quoted("x".repeat(70_000))), 413, "too-large", "64 KiB");
    }

    @Test
    void a_photo_is_kept_without_what_the_camera_wrote_and_given_back() throws IOException {
        takeIn("\"tag\": \"A\"");
        var out = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(30, 20, BufferedImage.TYPE_INT_RGB), "jpg", out);

        Answer put = client.photo(INTAKES + "/A/photo", out.toByteArray(), "image/jpeg");

        assertThat(put.status()).as(put.body()).isEqualTo(200);
        assertThat(put.text("photoUrl")).isEqualTo(INTAKES + "/A/photo");
        Answer got = client.get(put.text("photoUrl"));
        assertThat(got.status()).isEqualTo(200);
        assertThat(got.header("content-type")).isEqualTo("image/jpeg");
        assertThat(got.header("x-content-type-options")).isEqualTo("nosniff");
        refused(
                client.photo(INTAKES + "/A/photo", "<svg/>".getBytes(StandardCharsets.UTF_8), "image/png"),
                422,
                "bad-photo",
                "neither a JPEG");
        refused(client.get(INTAKES + "/B/photo"), 404, "unknown-card", "no photo");
    }

    @Test
    void tags_are_printed_on_a_sheet_with_what_must_not_go_on_the_rack() {
        takeIn("\"tag\": \"A 17\"");
        amend("A%2017", "{\"condition\": \"WARM\", \"reason\": \"felt\"}");
        takeIn("\"tag\": \"B\"");

        Answer sheet = client.get("/intake-labels?limit=40");

        assertThat(sheet.header("content-type")).startsWith("text/html");
        assertThat(sheet.body())
                .containsSubsequence("<h1>B</h1>", "nmc, 2.00 Ah", "intact", "<h1>A 17</h1>", "warm - NOT ON THE RACK");
    }

    @Test
    void a_load_is_sized_for_whoever_asks() {
        Answer sized = client.get("/api/v1/sizing?volts=4.2&ampereHours=2.6&chemistry=nmc&condition=INTACT"
                + "&protectionBoard=NONE&watts=10&cells=16");

        assertThat(sized.status()).as(sized.body()).isEqualTo(200);
        assertThat(sized.json().get("ohms").getDoubleValue()).isEqualTo(18);
        assertThat(sized.json().get("landmarks").size()).isEqualTo(3);
        assertThat(sized.json().get("roomBears").getIntValue()).isEqualTo(192);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "volts=4.2&ampereHours=2.6&rate=C/2&condition=INTACT | 422 | no-load | C/3",
                "volts=4.2&ampereHours=2.6&condition=leaking | 422 | no-load | hydrogen",
                "ampereHours=2.6 | 400 | bad-parameter | volts is missing",
                "volts=x&ampereHours=2.6 | 400 | bad-parameter | a number",
                "volts=4.2&ampereHours=2.6&drawer=22 | 400 | bad-parameter | OHMS:WATTS",
                "volts=4.2&ampereHours=2.6&ohms=22 | 400 | bad-parameter | it takes",
                "volts=4.2&ampereHours=2.6&awg=23 | 400 | bad-parameter | 18, 20, 22",
                "volts=4.2&ampereHours=NaN | 400 | bad-parameter | 0.01 to 1000"
            })
    void a_wish_that_is_dangerous_or_cannot_be_read_is_refused(String query, int status, String kind, String detail) {
        refused(client.get("/api/v1/sizing?" + query), status, kind, detail);
    }
}
