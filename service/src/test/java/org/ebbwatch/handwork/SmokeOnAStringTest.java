package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.handwork.QuietRack.BOARD;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.CellString;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.ContactInput;
import org.ebbwatch.passage.ContactInput.Means;
import org.ebbwatch.passage.DeskAnswer;
import org.ebbwatch.passage.DeskRequest.CheckIn;
import org.ebbwatch.passage.DeskRequest.Do;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Trigger;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.ebbwatch.sim.scenario.StringSpec;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two cells in series whose one load opens for smoke: for now, and not for good. */
class SmokeOnAStringTest {
    private static final long MINUTE = 60_000;

    @TempDir
    private Path records;

    private QuietRack rack;
    private int keys;

    @BeforeEach
    void two_cells_drain_in_series() {
        List<ChannelSpec> channels = IntStream.range(0, 2)
                .mapToObj(i -> new ChannelSpec(
                        ChannelRole.CELL,
                        Optional.of(CellSpec.build("A-" + i, NMC, 2.0).done()),
                        0,
                        0,
                        0,
                        false,
                        false,
                        true))
                .toList();
        BoardSpec board = BoardSpec.build("EB-1", channels)
                .strings(List.of(new StringSpec(0, 2, 20, true)))
                .thermometers(true, false, 0, false)
                .contactInputs(1)
                .done();
        rack = QuietRack.of(board, 1_000, records, List.of(new ContactInput(0, Means.SMOKE, false)));
        for (int channel = 0; channel < 2; channel++) {
            var card = new CellCard(
                    "A-" + channel,
                    Chemistry.LAYERED_OXIDE,
                    2.0,
                    20,
                    true,
                    true,
                    Optional.of(new CellString("P1", 0, 2)));
            assertThat(rack.ask(new CheckIn(BOARD, channel, card, Procedure.careful()), key()))
                    .isInstanceOf(DeskAnswer.Done.class);
        }
        rack.pass(5 * MINUTE);
        says(0, Act.PUT_ON);
        rack.pass(5 * MINUTE);
        assertThat(rack.hands().truth(0).loadApplied()).isTrue();
    }

    @AfterEach
    void close() {
        rack.close();
    }

    private String key() {
        return "string-request-" + ++keys;
    }

    private PassageView cell(int channel) {
        return rack.view().on(BOARD, channel).orElseThrow();
    }

    private void says(int channel, Act act) {
        assertThat(rack.ask(new Do(cell(channel).id(), cell(channel).sequence(), act), key()))
                .isInstanceOf(DeskAnswer.Done.class);
    }

    @Test
    void it_closes_again_once_a_person_has_decided() {
        rack.hands()
                .addFault(
                        Fault.onBoard(FaultKind.CONTACT, Trigger.at(rack.hands().eventMillis()))
                                .with(Map.of("input", 0.0))
                                .lasting(10 * MINUTE));
        rack.pass(20 * MINUTE);
        assertThat(rack.hands().truth(0).loadApplied()).isFalse();
        for (int channel = 0; channel < 2; channel++) {
            assertThat(cell(channel).phase()).isEqualTo(Phase.HELD);
            assertThat(cell(channel).reason()).contains("smoke");
        }

        says(0, Act.DRAIN_AGAIN);
        rack.pass(5 * MINUTE);
        for (int channel = 0; channel < 2; channel++) {
            assertThat(cell(channel).phase()).isEqualTo(Phase.DRAIN);
        }
        assertThat(rack.hands().truth(0).loadApplied()).isTrue();
    }
}
