package org.ebbwatch.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URI;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import org.ebbwatch.handwork.Place;
import org.ebbwatch.handwork.QuietRack;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A person at the terminal, a service with its real server, and a channel that reads what the person puts on it. */
class CalibrationTalkTest {
    @TempDir
    Path records;

    private final StringWriter said = new StringWriter();
    private final Deque<Answer> answers = new ArrayDeque<>();
    private QuietRack rack;
    private Place place;

    /** What the board reads when the person answers. */
    private record Answer(double volts, String text) {}

    @BeforeEach
    void serve() {
        rack = QuietRack.of(
                BoardSpec.build(
                                "EB-1",
                                List.of(ChannelSpec.byHand(
                                        CellSpec.build("A", NMC, 2.0).done(), 22)))
                        .thermometers(true, false, 0, false)
                        .done(),
                records);
        place = Place.of(rack, records);
    }

    @AfterEach
    void close() {
        place.close();
    }

    private boolean talk() throws Exception {
        URI service = URI.create(place.server().getURI().toString());
        var talk = new CalibrationTalk(
                new ServiceCall(service, place.token()),
                question -> {
                    said.write(question + "\n");
                    Answer answer = answers.remove();
                    rack.feed(answer.volts, 10);
                    return answer.text;
                },
                new PrintWriter(said));
        return talk.calibrate(Map.of(
                "board",
                "bench",
                "channel",
                0,
                "meter",
                "bench meter",
                "meterPercent",
                0.05,
                "meterVolts",
                0.0001,
                "by",
                "Anna"));
    }

    @Test
    void leads_from_the_caution_to_a_kept_calibration() throws Exception {
        answers.addAll(List.of(
                new Answer(0.010, ""), new Answer(0.510, "0.5"), new Answer(4.010, "4"), new Answer(4.010, "y")));
        assertThat(talk()).isTrue();
        assertThat(said.toString())
                .contains("Never short a cell")
                .containsSubsequence(
                        "Clip the channel's two leads", "0.3 to 0.8 V", "3.0 to 4.5 V", "Keep it?", "Kept.");
        assertThat(rack.calibrations().calibrations()).hasSize(1);
    }

    @Test
    void tells_why_a_point_was_not_taken_and_asks_again() throws Exception {
        answers.addAll(List.of(
                new Answer(3.7, ""),
                new Answer(0.010, ""),
                new Answer(0.510, "half a volt"),
                new Answer(0.510, "0.1"),
                new Answer(0.510, "q")));
        assertThat(talk()).isFalse();
        assertThat(said.toString())
                .contains("3.700 V: its leads are not shorted")
                .contains("with a point and without the unit")
                .contains("0.3 to 0.8 V, not 0.1000 V")
                .contains("nothing was kept");
        assertThat(rack.calibrations().calibrationRun()).isEmpty();
        assertThat(rack.calibrations().calibrations()).isEmpty();
    }
}
