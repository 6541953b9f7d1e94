package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.UUID;
import org.ebbwatch.evening.EveningCheck;
import org.ebbwatch.evening.EveningCheck.State;
import org.ebbwatch.evening.rule.Matter;
import org.ebbwatch.evening.rule.Proof;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.junit.jupiter.api.Test;

/** Whatever becomes of an evening check, it leaves no load otherwise than it was. */
class EveningBrokenOffTest extends EveningBench {
    @Test
    void a_check_that_is_ended_while_a_load_is_open_leaves_the_load_on() {
        UUID id = begin();
        openHalfway();
        rack.finishEvening(id);
        rack.pass(MINUTE);

        assertThat(cell(SWITCHED).loadOn()).isTrue();
        assertThat(cell(SWITCHED).phase()).isEqualTo(Phase.DRAIN);
    }

    @Test
    void a_service_that_is_killed_while_a_load_is_open_puts_it_on_again() {
        UUID id = begin();
        openHalfway();
        rack.close();
        rack = rack.again(records);
        rack.pass(5 * MINUTE);

        assertThat(cell(SWITCHED).loadOn()).isTrue();
        assertThat(cell(SWITCHED).phase()).isEqualTo(Phase.DRAIN);
        assertThat(rack.evening(id).orElseThrow().state()).isEqualTo(State.BROKEN_OFF);
        assertThat(rack.evening(id).orElseThrow().verdict()).isEqualTo(Proof.NOT_PROVEN);
    }

    @Test
    void a_board_that_falls_silent_while_a_load_is_open_has_it_on_again_when_it_is_back() {
        begin();
        openHalfway();
        rack.hands().addFault(Fault.onBoard(FaultKind.SILENT, now()).lasting(2 * MINUTE));
        rack.pass(10 * MINUTE);

        assertThat(cell(SWITCHED).past()).anyMatch(past -> past.what().equals("SILENT"));
        assertThat(cell(SWITCHED).loadOn()).isTrue();
        assertThat(cell(SWITCHED).phase()).isEqualTo(Phase.DRAIN);
    }

    @Test
    void a_cell_that_is_held_is_left_alone() {
        fault(SWITCHED, FaultKind.PROTECTION_CUT_OFF);
        rack.pass(5 * MINUTE);
        assertThat(cell(SWITCHED).phase()).isEqualTo(Phase.HELD);
        boolean before = cell(SWITCHED).loadOn();
        EveningCheck check = check();

        assertThat(cell(SWITCHED).loadOn()).isEqualTo(before);
        assertThat(point(check, Matter.LOAD, "A").seen()).contains("a load that is locked is not touched");
    }

    private void openHalfway() {
        for (int scans = 0; scans < 100 && rack.view().channels().get(SWITCHED).loadApplied(); scans++) {
            rack.step();
        }
        assertThat(rack.view().channels().get(SWITCHED).loadApplied())
                .as("it was opened")
                .isFalse();
    }
}
