package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.handwork.QuietRack.BOARD;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import java.nio.file.Path;
import java.util.List;
import org.ebbwatch.evening.EveningCheck;
import org.ebbwatch.evening.EveningReply;
import org.ebbwatch.evening.rule.Matter;
import org.ebbwatch.evening.rule.Point;
import org.ebbwatch.evening.rule.Proof;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.DeskAnswer;
import org.ebbwatch.passage.DeskRequest.CheckIn;
import org.ebbwatch.passage.DeskRequest.Do;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.cell.SlowShare;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A small cell in its hold, and later in its rest, in the evening: neither starts again because somebody checks. */
class RestingEveningTest {
    private static final long MINUTE = 60_000;
    private static final long HOUR = 60 * MINUTE;

    @TempDir
    private Path records;

    private QuietRack rack;

    @BeforeEach
    void a_small_cell_is_drained_into_its_hold() {
        BoardSpec board = BoardSpec.build(
                        "EB-1",
                        List.of(ChannelSpec.switched(
                                CellSpec.build("A", NMC, 0.2)
                                        .slowShare(new SlowShare(0.0012, 60))
                                        .done(),
                                10)))
                .thermometers(true, false, 0, false)
                .done();
        rack = QuietRack.of(board, records);
        var card = new CellCard("A", Chemistry.LAYERED_OXIDE, 0.2, 10, true, false);
        assertThat(rack.ask(new CheckIn(BOARD, 0, card, Procedure.careful()), "check-in-it"))
                .isInstanceOf(DeskAnswer.Done.class);
        rack.pass(5 * MINUTE);
        assertThat(rack.ask(new Do(cell().id(), cell().sequence(), Act.PUT_ON), "put-it-on"))
                .isInstanceOf(DeskAnswer.Done.class);
        rack.pass(6 * HOUR);
        assertThat(cell().remainingMillis()).as("its hold runs").isBetween(1L, 12 * HOUR - 1);
    }

    @AfterEach
    void close() {
        rack.close();
    }

    private PassageView cell() {
        return rack.view().on(BOARD, 0).orElseThrow();
    }

    private Point load(String key) {
        EveningReply begun = rack.startEvening("Anna", 0, key);
        EveningCheck check = ((EveningReply.Done) begun).check();
        rack.pass(3 * MINUTE);
        EveningReply ended = rack.finishEvening(check.id());
        return ((EveningReply.Done) ended)
                .check().points().stream()
                        .filter(point -> point.matter() == Matter.LOAD)
                        .findFirst()
                        .orElseThrow();
    }

    @Test
    void a_load_is_not_touched_in_hold_or_rest_and_their_clocks_run_on() {
        long holdLeft = cell().remainingMillis();
        Point held = load("evening-of-the-hold");
        assertThat(held.proof()).isEqualTo(Proof.PASSED);
        assertThat(held.seen()).contains("its hold could begin again");
        assertThat(cell().remainingMillis()).isEqualTo(holdLeft - 3 * MINUTE);

        rack.pass(holdLeft + HOUR);
        assertThat(cell().phase()).isEqualTo(Phase.REST);
        long restLeft = cell().remainingMillis();
        Point rested = load("evening-of-the-rest");
        assertThat(rested.proof()).isEqualTo(Proof.PASSED);
        assertThat(rested.seen()).contains("came back", "would disturb the rest");
        assertThat(cell().remainingMillis()).isEqualTo(restLeft - 3 * MINUTE);
        assertThat(cell().loadOn()).isFalse();
    }
}
