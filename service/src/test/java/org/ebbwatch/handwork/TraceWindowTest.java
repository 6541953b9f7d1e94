package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import io.micronaut.json.tree.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.cell.SlowShare;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Any part of a trace, and what a resting cell comes to, as the page asks for them. */
class TraceWindowTest {
    private static final long HOUR = 3_600_000;
    private static final double COUNT_VOLTS = 0.001;

    @TempDir
    private Path records;

    private Place place;
    private Client client;
    private String id;

    @BeforeEach
    void a_cell_is_checked_in() {
        CellSpec cell = CellSpec.build("A-17", NMC, 2.0)
                .stateOfCharge(0.02)
                .slowShare(new SlowShare(0.0012, 60))
                .done();
        BoardSpec board =
                BoardSpec.build("EB-1", List.of(ChannelSpec.switched(cell, 22))).done();
        place = Place.of(QuietRack.of(board, records), records);
        client = new Client(place);
        id = client.post(
                        "/api/v1/passages",
                        """
                        {"board": "bench", "channel": 0, "tag": "A-17", "chemistry": "nmc", "ratedAmpereHours": 2.0,
                         "loadOhms": 22, "switched": true}
                        """)
                .text("passageId");
    }

    @AfterEach
    void close() {
        place.close();
    }

    private String path(String what) {
        return "/api/v1/passages/" + id + '/' + what;
    }

    private List<Long> times(String query) {
        List<Long> times = new ArrayList<>();
        client.get(path("trace?" + query))
                .json()
                .get("eventMillis")
                .values()
                .forEach(it -> times.add(it.getLongValue()));
        return times;
    }

    private PassageView passage() {
        return place.rack().view().passages().get(0);
    }

    @Test
    void of_a_part_every_reading_is_given_where_the_whole_is_thinned_out() {
        place.rack().pass(2 * HOUR);
        List<Long> whole = times("points=100");
        long middle = whole.get(whole.size() / 2);
        List<Long> part = times("points=1000&from=" + (middle - 30_000) + "&to=" + (middle + 30_000));

        assertThat(whole).hasSizeLessThan(250);
        assertThat(part).hasSizeBetween(30, 31).isSorted();
        assertThat(part.get(0)).isGreaterThanOrEqualTo(middle - 30_000);
        assertThat(part.get(part.size() - 1)).isLessThanOrEqualTo(middle + 30_000);
    }

    @Test
    void a_part_that_was_never_read_is_empty() {
        place.rack().pass(60_000);
        assertThat(times("from=0&to=" + (passage().openedMillis() - 1))).isEmpty();
        assertThat(times("from=" + Long.MAX_VALUE)).isEmpty();
    }

    @Test
    void a_part_that_ends_before_it_begins_is_refused() {
        Client.Answer refused = client.get(path("trace?from=20&to=10"));
        assertThat(refused.status()).isEqualTo(400);
        assertThat(refused.text("detail")).startsWith("from is 20, later than to, which is 10.");
    }

    @Test
    void a_resting_cell_is_expected_where_it_comes_to() {
        place.rack().pass(120_000);
        assertThat(client.get(path("rest-prediction")).status()).isEqualTo(204);
        client.post(path("acts"), "{\"act\": \"PUT_ON\"}");
        for (int hours = 0; passage().phase() != Phase.REST; hours++) {
            assertThat(hours).isLessThan(200);
            place.rack().pass(HOUR);
        }
        place.rack().pass(2 * HOUR);
        JsonNode prediction = client.get(path("rest-prediction")).json();
        long end = prediction.get("eventMillis").getLongValue();
        double lowest = prediction.get("lowestVolts").getDoubleValue();
        double highest = prediction.get("highestVolts").getDoubleValue();
        place.rack().pass(end - place.rack().view().boards().get(0).eventMillis() - 60_000);

        assertThat(passage().phase()).isEqualTo(Phase.REST);
        assertThat(place.rack().view().channels().get(0).volts())
                .isBetween(lowest - COUNT_VOLTS, highest + COUNT_VOLTS);
        assertThat(prediction.get("medianVolts").getDoubleValue()).isBetween(lowest, highest);
    }
}
