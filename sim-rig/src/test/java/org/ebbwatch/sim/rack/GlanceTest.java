package org.ebbwatch.sim.rack;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.ebbwatch.rig.message.Readings;
import org.ebbwatch.rig.message.SetLoad;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Trigger;
import org.junit.jupiter.api.Test;

/** What a harness reads beside the wire is what stands on it, and what is really the case. */
class GlanceTest {
    @Test
    void a_reading_is_what_the_frame_says() {
        TestRack rack = TestRack.with();
        rack.host.tell(rack.board, new SetLoad(0, true));
        rack.run(60);

        Readings last = rack.host.lastReadings();

        for (int channel = 0; channel < last.readings().size(); channel++) {
            assertThat(rack.board.reading(channel)).isEqualTo(last.readings().get(channel));
        }
    }

    @Test
    void a_glance_agrees_with_the_truth() {
        TestRack rack = TestRack.with(Fault.on(0, FaultKind.OPEN_LEAD, Trigger.at(120_000)));
        rack.host.tell(rack.board, new SetLoad(0, true));
        rack.run(60);

        agree(rack);
        assertThat(rack.board.glance(0).loadConducts()).isTrue();
        assertThat(rack.board.glance(0).attached()).isTrue();

        rack.run(120);

        agree(rack);
        assertThat(rack.board.glance(0).attached()).isFalse();
    }

    private static void agree(TestRack rack) {
        Glance glance = rack.board.glance(0);
        CellTruth truth = rack.board.truth(0);
        assertThat(List.of(glance.leadVolts(), glance.cellCelsius(), glance.amperes()))
                .isEqualTo(List.of(truth.leadVolts(), truth.celsius(), truth.amperes()));
        assertThat(glance.loadConducts()).isEqualTo(truth.loadApplied());
        assertThat(glance.attached()).isEqualTo(truth.attached());
        assertThat(glance.bonded()).isEqualTo(truth.bonded());
    }

    @Test
    void a_tripped_protection_board_shows_in_a_glance() {
        CellSpec cell =
                TestRack.nmc("a").protectionBoard(3.6).stateOfCharge(0.4).done();
        TestRack rack = new TestRack(TestRack.one(cell).done());
        rack.host.tell(rack.board, new SetLoad(0, true));
        rack.run(3_600);

        assertThat(rack.board.glance(0).tripped()).isTrue();
    }
}
