package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import io.micronaut.json.tree.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.ebbwatch.cli.Ebbwatch;
import org.ebbwatch.handwork.Client.Answer;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.Happening;
import org.ebbwatch.passage.Happenings;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.cell.SlowShare;
import org.ebbwatch.sim.rack.CellTruth;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/**
 * The whole job at a board that measures and does nothing else: no load switch, no lead check, no current. A person puts the
 * resistor on and takes it off, bonds and parts, holds a meter to the cell, and says so over REST; the service says when.
 */
class HandSwitchedJobTest {
    private static final int BENCH = 0;
    private static final int CONTAINER = 3;
    private static final long MINUTE = 60_000;
    private static final long HOUR = 60 * MINUTE;

    @TempDir
    private Path records;

    private Place place;
    private Client client;
    private String passage;

    @BeforeEach
    void an_old_cell_lies_on_the_bench() {
        CellSpec cell = CellSpec.build("A-17", NMC, 2.0)
                .slowShare(new SlowShare(0.0012, 60))
                .done();
        BoardSpec board = BoardSpec.build("EB-1", List.of(ChannelSpec.byHand(cell, 22)))
                .thermometers(true, true, 1, false)
                .done();
        place = Place.of(QuietRack.of(board, records), records);
        client = new Client(place);
    }

    @AfterEach
    void close() {
        place.close();
    }

    // ---- what the person does and says ----

    private void checksTheCellIn() {
        Answer opened = client.post(
                "/api/v1/passages",
                """
                {"board": "bench", "channel": 0, "tag": "A-17", "chemistry": "nmc", "ratedAmpereHours": 2.0,
                 "loadOhms": 22, "switched": false, "procedure": "careful"}
                """);
        assertThat(opened.status()).as(opened.body()).isEqualTo(201);
        passage = opened.text("passageId");
    }

    private void says(String act) {
        done(client.post(path("acts"), "{\"act\": \"" + act + "\"}"));
    }

    private void saysThatTheLeadsAreBonded(boolean sparked) {
        done(client.post(path("acts"), "{\"act\": \"TIE_OFF\", \"spark\": " + sparked + '}'));
    }

    private void announcesHandWork() {
        done(client.post(path("announcements"), "{\"kind\": \"HAND_WORK\", \"minutes\": 30}"));
    }

    private void measuresWithAMeter() {
        CellTruth truth = place.rack().hands().truth(BENCH);
        done(client.post(path("meter-readings"), "{\"volts\": " + truth.leadVolts() + '}'));
    }

    private void putsTheCellInto(int from, int to) {
        place.rack().hands().move(from, to);
        done(client.post(path("moves"), "{\"channel\": " + to + '}'));
    }

    private static void done(Answer answer) {
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
    }

    // ---- what the service says ----

    private String path(String what) {
        return "/api/v1/passages/" + passage + '/' + what;
    }

    private JsonNode seen() {
        return client.get("/api/v1/passages/" + passage).json();
    }

    private void isIn(String phase) {
        assertThat(seen().get("passage").get("phase").getStringValue()).isEqualTo(phase);
    }

    private List<String> askedFor() {
        List<String> wishes = new ArrayList<>();
        seen().get("passage")
                .get("waitsFor")
                .values()
                .forEach(wish -> wishes.add(wish.get("wish").getStringValue()));
        return wishes;
    }

    /** Goes away, looks in every ten minutes, and gives how long it took until the service asked for this. */
    private long comesBackWhenAskedTo(String wish, long atMostHours) {
        for (long waited = 0; waited <= atMostHours * HOUR; waited += 10 * MINUTE) {
            if (askedFor().contains(wish)) {
                return waited;
            }
            place.rack().pass(10 * MINUTE);
        }
        throw new AssertionError("not asked for " + wish + " within " + atMostHours + " h: " + seen());
    }

    private void thePlanNames(String task) {
        JsonNode errand = client.get("/api/v1/plan").json().get("errands").get(0);
        assertThat(errand.get("task").getStringValue()).isEqualTo(task);
        assertThat(errand.get("canWait").getBooleanValue()).isTrue();
    }

    private void nothingWasEverFound() {
        seen().get("past").values().forEach(past -> assertThat(past.get("kind").getStringValue())
                .as(past.toString())
                .isEqualTo("PHASE"));
    }

    private void theContainerIsNoPlaceToPart() {
        Answer refused = client.post(path("acts"), "{\"act\": \"PART\"}");
        assertThat(refused.status()).isEqualTo(409);
        assertThat(refused.text("detail")).contains("measures no volts");
    }

    private void nobodyWasAskedWhereTheLoadIs() {
        Happenings happenings = place.rack().happenings();
        long begin = happenings.latest() / 1_000_000_000 * 1_000_000_000;
        assertThat(happenings.hasAllSince(begin)).isTrue();
        assertThat(happenings.since(begin, Happenings.KEPT))
                .isNotEmpty()
                .noneMatch(each -> each.happening().kind() == Happening.Kind.SEEMS);
    }

    // ---- the procedure ----

    @Test
    void a_cell_is_emptied_tied_off_and_released_by_hand() throws IOException {
        checksTheCellIn();
        isIn("CHECK_IN");
        comesBackWhenAskedTo("ASK_PUT_ON", 1);
        thePlanNames("PUT_ON");

        place.rack().hands().handLoad(BENCH, true);
        says("PUT_ON");
        isIn("DRAIN");
        place.rack().pass(HOUR);
        thePlanNames("TAKE_OFF");

        long drained = comesBackWhenAskedTo("ASK_TAKE_OFF", 48);
        assertThat(drained).isGreaterThan(12 * HOUR);
        place.rack().hands().handLoad(BENCH, false);
        says("TAKE_OFF");
        isIn("REST");

        long rested = comesBackWhenAskedTo("ASK_METER", 26);
        assertThat(rested).isGreaterThanOrEqualTo(24 * HOUR);
        measuresWithAMeter();
        comesBackWhenAskedTo("ASK_TIE_OFF", 1);

        announcesHandWork();
        place.rack().hands().bond(BENCH);
        place.rack().hands().insulate(BENCH);
        saysThatTheLeadsAreBonded(false);
        isIn("TIE_OFF");
        place.rack().hands().contain(BENCH, true);
        putsTheCellInto(BENCH, CONTAINER);

        long watched = comesBackWhenAskedTo("ASK_PART", 26);
        assertThat(watched).isGreaterThanOrEqualTo(23 * HOUR);
        theContainerIsNoPlaceToPart();
        putsTheCellInto(CONTAINER, BENCH);
        comesBackWhenAskedTo("ASK_PART", 13);
        place.rack().hands().part(BENCH);
        says("PART");

        comesBackWhenAskedTo("ASK_METER", 3);
        measuresWithAMeter();
        comesBackWhenAskedTo("ASK_RELEASE", 1);
        says("RELEASE");

        isIn("RELEASED");
        nothingWasEverFound();
        nobodyWasAskedWhereTheLoadIs();
        assertThat(place.rack().hands().truth(BENCH).restedVoltsAfter24h())
                .isLessThan(Procedure.careful().rest().limitVolts());
        List<List<String>> twice = place.rack().recordedAndFoldedAgain(UUID.fromString(passage));
        assertThat(twice.get(1)).isEqualTo(twice.get(0)).hasSize(4);
        theEvidenceHolds();
    }

    /** Its bundle, with the readings of both channels, is judged again the same. */
    private void theEvidenceHolds() throws IOException {
        place.close();
        Path folder = Files.createDirectory(records.resolve("handed over"));
        assertThat(program("bundle", "--storage", records.toString(), "--to", folder.toString()))
                .isZero();
        try (Stream<Path> bundles = Files.list(folder)) {
            Path bundle = bundles.findFirst().orElseThrow();
            assertThat(program("verify", bundle.toString())).isZero();
        }
        place = Place.of(place.rack().again(records), records);
    }

    private static int program(String... arguments) {
        CommandLine program = Ebbwatch.commandLine();
        program.setOut(new PrintWriter(new StringWriter()));
        return program.execute(arguments);
    }

    @Test
    void leads_that_spark_mean_back_on_the_load() {
        checksTheCellIn();
        comesBackWhenAskedTo("ASK_PUT_ON", 1);
        place.rack().hands().handLoad(BENCH, true);
        says("PUT_ON");
        place.rack().pass(HOUR);
        place.rack().hands().handLoad(BENCH, false);
        says("TAKE_OFF");
        isIn("REST");

        saysThatTheLeadsAreBonded(true);

        isIn("DRAIN");
        assertThat(askedFor()).containsExactly("ASK_PUT_ON");
        assertThat(seen().get("passage").get("reason").getStringValue()).isEqualTo("sparked when bonded");
    }

    @Test
    void whoever_forgets_to_say_what_the_hands_did_is_understood() {
        checksTheCellIn();
        comesBackWhenAskedTo("ASK_PUT_ON", 1);
        place.rack().hands().handLoad(BENCH, true);
        place.rack().pass(2 * MINUTE);
        isIn("DRAIN");
        assertThat(reason()).isEqualTo("the load seems to have been put on");

        place.rack().pass(HOUR);
        place.rack().hands().handLoad(BENCH, false);
        place.rack().pass(2 * MINUTE);
        assertThat(askedFor()).containsExactly("ASK_PUT_ON");
        assertThat(client.get("/api/v1/passages/" + passage).body()).contains("seems to have been taken off early");
        anotherRunFindsTheSame();
        place.rack().pass(HOUR);
        place.rack().hands().handLoad(BENCH, true);
        place.rack().pass(2 * MINUTE);
        assertThat(reason()).isEqualTo("the load seems to have been put on");

        comesBackWhenAskedTo("ASK_TAKE_OFF", 48);
        place.rack().hands().handLoad(BENCH, false);
        place.rack().pass(MINUTE);
        says("TAKE_OFF");
        isIn("REST");
        assertThat(reason()).isEqualTo("taken off after its hold");
        assertThat(comesBackWhenAskedTo("ASK_METER", 26)).isGreaterThanOrEqualTo(24 * HOUR);
        anotherRunFindsTheSame();
    }

    private String reason() {
        return seen().get("passage").get("reason").getStringValue();
    }

    private void anotherRunFindsTheSame() {
        String before = reason();
        place.close();
        place = Place.of(place.rack().again(records), records);
        client = new Client(place);
        assertThat(reason()).isEqualTo(before);
        List<List<String>> twice = place.rack().recordedAndFoldedAgain(UUID.fromString(passage));
        assertThat(twice.get(1)).isEqualTo(twice.get(0));
    }
}
