package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import io.micronaut.json.JsonMapper;
import io.micronaut.json.tree.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.awaitility.Awaitility;
import org.ebbwatch.handwork.Listening.Told;
import org.ebbwatch.passage.Happenings;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EventRoutesTest {
    private static final String CHECK_IN =
            """
            {"board": "bench", "channel": 0, "tag": "A-17", "chemistry": "nmc", "ratedAmpereHours": 2.0,
             "loadOhms": 22, "switched": true}
            """;

    @TempDir
    private Path records;

    private Place place;
    private Client client;

    @BeforeEach
    void a_bench_with_one_cell() {
        BoardSpec board = BoardSpec.build(
                        "EB-1",
                        List.of(ChannelSpec.switched(
                                CellSpec.build("A-17", NMC, 2.0).done(), 22)))
                .done();
        place = Place.of(QuietRack.of(board, records), records);
        client = new Client(place);
    }

    @AfterEach
    void close() {
        place.close();
    }

    private static JsonNode data(Told told) throws IOException {
        return JsonMapper.createDefault().readValue(told.data(), JsonNode.class);
    }

    private static String what(Told told) throws IOException {
        return data(told).get("kind").getStringValue()
                + ' '
                + data(told).get("what").getStringValue();
    }

    @Test
    void the_first_item_comes_at_once_and_says_where_one_stands() throws IOException {
        try (var listening = new Listening(place)) {
            assertThat(listening.status()).isEqualTo("HTTP/1.1 200 OK");
            Told first = listening.next();

            assertThat(first.name()).isEqualTo("hello");
            assertThat(first.id())
                    .isEqualTo(Long.toString(place.rack().happenings().latest()));
        }
    }

    @Test
    void what_happens_is_told_in_order_with_numbers_that_rise() throws IOException {
        try (var listening = new Listening(place)) {
            long before = Long.parseLong(listening.next().id());
            String id = client.post("/api/v1/passages", CHECK_IN).text("passageId");
            place.rack().pass(120_000);
            client.post("/api/v1/passages/" + id + "/acts", "{\"act\": \"PUT_ON\"}");

            List<String> told = new ArrayList<>();
            for (int n = 1; n <= 4; n++) {
                Told each = listening.next();
                assertThat(each.name()).isEqualTo("happening");
                assertThat(each.id()).isEqualTo(Long.toString(before + n));
                told.add(what(each));
            }
            assertThat(told).containsExactly("OPENED A-17", "ASKED ASK_PUT_ON", "DONE PUT_ON", "PHASE DRAIN");
        }
    }

    @Test
    void a_happening_carries_the_tag_by_which_its_passage_can_be_acted_on() throws IOException {
        try (var listening = new Listening(place)) {
            listening.next();
            String id = client.post("/api/v1/passages", CHECK_IN).text("passageId");
            place.rack().pass(120_000);
            listening.next();
            JsonNode asked = data(listening.next());

            assertThat(asked.get("passageId").getStringValue()).isEqualTo(id);
            assertThat('"' + Long.toString(asked.get("sequence").getLongValue()) + '"')
                    .isEqualTo(client.tag(id));
        }
    }

    @Test
    void whoever_comes_back_with_its_last_number_misses_nothing() throws IOException {
        String last;
        try (var listening = new Listening(place)) {
            last = listening.next().id();
        }
        client.post("/api/v1/passages", CHECK_IN);

        try (var listening = new Listening(place, "Last-Event-ID: " + last)) {
            assertThat(listening.next().name()).isEqualTo("hello");
            assertThat(what(listening.next())).isEqualTo("OPENED A-17");
        }
    }

    @Test
    void whoever_missed_what_nobody_remembers_is_told_to_look_anew() throws IOException {
        for (String last : new String[] {"0", "999999999999999999", "kite"}) {
            try (var listening = new Listening(place, "Last-Event-ID: " + last)) {
                Told first = listening.next();
                assertThat(first.name()).as(last).isEqualTo("reset");
                assertThat(first.id())
                        .isEqualTo(Long.toString(place.rack().happenings().latest()));
            }
        }
    }

    @Test
    void numbers_rise_across_a_restart_so_that_an_old_one_is_never_taken_for_a_new_one() throws IOException {
        client.post("/api/v1/passages", CHECK_IN);
        long last = place.rack().happenings().latest();
        place.close();
        place = Place.of(place.rack().again(records), records);
        client = new Client(place);

        assertThat(place.rack().happenings().latest()).isGreaterThan(last);
        try (var listening = new Listening(place, "Last-Event-ID: " + last)) {
            assertThat(listening.next().name()).isEqualTo("reset");
        }
    }

    @Test
    void a_comment_shows_every_fifteen_seconds_that_the_line_is_up() throws IOException {
        try (var listening = new Listening(place)) {
            listening.next();
            place.server().getApplicationContext().getBean(PlaceClock.class).pass(15);
            Told comment = listening.next();

            assertThat(comment.comment()).isEqualTo("here");
            assertThat(comment.data()).isEmpty();
            assertThat(comment.id()).isEmpty();
        }
    }

    @Test
    void too_many_listeners_are_refused_and_a_place_that_is_given_up_is_free_again() throws IOException {
        List<Listening> all = new ArrayList<>();
        for (int n = 0; n < 32; n++) {
            var listening = new Listening(place);
            listening.next();
            all.add(listening);
        }
        try (var oneTooMany = new Listening(place)) {
            assertThat(oneTooMany.status()).isEqualTo("HTTP/1.1 503 Service Unavailable");
        }
        for (Listening each : all) {
            each.close();
        }
        Awaitility.await().untilAsserted(() -> {
            try (var again = new Listening(place)) {
                assertThat(again.status()).isEqualTo("HTTP/1.1 200 OK");
            }
        });
    }

    @Test
    void a_listener_that_reads_too_slowly_holds_nobody_up_and_is_told_to_look_anew() throws IOException {
        try (var slow = new Listening(place)) {
            slow.next();
            moreThanAnyBufferHolds();
            Told told = slow.next();
            while (told.name().equals("happening")) {
                told = slow.next();
            }
            assertThat(told.name()).isEqualTo("reset");
        }
    }

    /** Twice what is remembered, and some megabytes more than the machine's sockets hold. */
    private void moreThanAnyBufferHolds() {
        String detail = "x".repeat(4_000);
        for (int n = 0; n < 2 * Happenings.KEPT; n++) {
            place.rack().linkSays(detail);
        }
    }

    @Test
    void a_stream_ends_with_the_service() throws IOException {
        try (var listening = new Listening(place)) {
            listening.next();
            place.server().getApplicationContext().close();
            assertThat(listening.isEnded()).isTrue();
        }
    }
}
