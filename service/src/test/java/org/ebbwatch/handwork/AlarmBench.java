package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import io.micronaut.json.tree.JsonNode;
import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import org.ebbwatch.alarm.AlarmView;
import org.ebbwatch.alarm.AlarmsView;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.handwork.Client.Answer;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.ebbwatch.store.AlarmStepRow;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A place where an alarm stands, and what tests ask about it over HTTP. */
abstract class AlarmBench {
    private static final String CHECK_IN =
            """
            {"board": "bench", "channel": 0, "tag": "A-17", "chemistry": "nmc", "ratedAmpereHours": 2.0,
             "loadOhms": 22, "switched": true}
            """;
    static final String ACKNOWLEDGE = "{\"step\": \"ACKNOWLEDGED\"}";

    @TempDir
    Path records;

    Place place;
    Client client;
    String passage;
    String id;

    /** A load put on before the lead was proven holds a passage: the alarm HELD. */
    @BeforeEach
    void a_passage_is_held() {
        BoardSpec board = BoardSpec.build(
                        "EB-1",
                        List.of(ChannelSpec.switched(
                                CellSpec.build("A-17", NMC, 2.0).done(), 22)))
                .done();
        place = Place.of(QuietRack.of(board, records), records);
        client = new Client(place);
        passage = client.post("/api/v1/passages", CHECK_IN).text("passageId");
        Answer early = client.post("/api/v1/passages/" + passage + "/acts", "{\"act\": \"PUT_ON\"}");
        assertThat(early.text("phase")).isEqualTo("HELD");
        place.rack().pass(4_000);
        id = alarm().id().toString();
        assertThat(alarm().kind()).isEqualTo(AlarmKind.HELD);
    }

    @AfterEach
    void close() {
        place.close();
    }

    AlarmView alarm() {
        return place.rack().alarms().alarms().get(0);
    }

    String path() {
        return "/api/v1/alarms/" + id + "/steps";
    }

    List<AlarmStepRow> steps() {
        return place.rack().steps(UUID.fromString(id));
    }

    AlarmStepRow lastStep() {
        return steps().get(steps().size() - 1);
    }

    /** A problem of this kind, and nothing done. */
    JsonNode problem(int status, String kind, Supplier<Answer> request) {
        AlarmsView before = place.rack().alarms();
        List<AlarmStepRow> stepsBefore = steps();
        long news = place.rack().happenings().latest();
        Answer answer = request.get();
        assertThat(answer.status()).as(answer.body()).isEqualTo(status);
        assertThat(answer.header("content-type")).isEqualTo("application/problem+json");
        assertThat(answer.text("type")).isEqualTo("/api/v1/problems/" + kind);
        assertThat(answer.text("detail")).isNotBlank();
        assertThat(place.rack().alarms()).isEqualTo(before);
        assertThat(steps()).isEqualTo(stepsBefore);
        assertThat(place.rack().happenings().latest()).isEqualTo(news);
        return answer.json();
    }

    Answer done(String body) {
        Answer answer = client.post(path(), body);
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
        return answer;
    }
}
