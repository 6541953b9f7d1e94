package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;
import static org.ebbwatch.judge.PassageBench.seconds;

import org.ebbwatch.judge.procedure.Procedure;
import org.junit.jupiter.api.Test;

/** A procedure changed, a channel recalibrated, a cell moved under way. */
class ProcedureChangeTest {

    @Test
    void a_stricter_procedure_takes_back_that_a_cell_may_be_tied_off() {
        PassageBench bench = PassageBench.switched()
                .draining()
                .drainedTo(0.07, 0.03)
                .watch(hours(12))
                .watch(hours(24))
                .watch(minutes(5));
        assertThat(bench.judge().allowed()).contains(Act.TIE_OFF);

        bench.judgeBy(Procedure.strict());

        assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);
        bench.watch(hours(47));
        assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);
        bench.watch(hours(2));
        assertThat(bench.judge().allowed()).contains(Act.TIE_OFF);
    }

    @Test
    void a_stricter_procedure_sends_a_cell_back_that_is_over_its_limit() {
        PassageBench bench =
                PassageBench.switched().resting().judgeBy(Procedure.strict()).watch(seconds(4));

        assertThat(bench.raised()).containsExactly(FindingKind.REBOUND);
        assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
    }

    @Test
    void a_procedure_that_wants_a_stricter_rest_holds_a_cell_that_is_tied_off_already() {
        PassageBench bench = PassageBench.switched().tiedOff().judgeBy(Procedure.strict());

        assertThat(bench.phase()).isEqualTo(Phase.HELD);
        assertThat(bench.judge().reason()).contains("procedure");
    }

    @Test
    void a_procedure_that_wants_a_longer_hold_drains_again_what_was_held_too_short() {
        PassageBench bench =
                PassageBench.switched().resting().judgeBy(holding(hours(20).toMillis()));

        bench.watch(hours(24)).watch(minutes(5));

        assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        assertThat(bench.judge().reason()).contains("before its hold was complete");
    }

    @Test
    void a_procedure_that_wants_a_longer_hold_holds_a_cell_that_is_tied_off_already() {
        PassageBench bench =
                PassageBench.switched().parted().judgeBy(holding(hours(20).toMillis()));

        assertThat(bench.phase()).isEqualTo(Phase.HELD);
    }

    @Test
    void a_procedure_that_wants_a_shorter_hold_takes_nothing_back() {
        PassageBench bench =
                PassageBench.switched().parted().judgeBy(holding(hours(10).toMillis()));

        assertThat(bench.phase()).isEqualTo(Phase.TIE_OFF);
        assertThat(bench.watch(minutes(62)).judge().allowed()).contains(Act.RELEASE);
    }

    private static Procedure holding(long holdMillis) {
        Procedure careful = Procedure.careful();
        Procedure.Drain drain = careful.drain();
        return new Procedure(
                "other",
                1,
                new Procedure.Drain(drain.provenVolts(), drain.limitVolts(), holdMillis, drain.longestMillis()),
                careful.rest(),
                careful.tieOff(),
                careful.heat(),
                careful.plausible());
    }

    @Test
    void a_stricter_procedure_takes_back_a_release() {
        PassageBench bench = PassageBench.switched().releasable().judgeBy(Procedure.strict());

        assertThat(bench.judge().allowed()).doesNotContain(Act.RELEASE);
    }

    @Test
    void the_same_procedure_again_changes_nothing_that_was_reached() {
        PassageBench bench = PassageBench.switched().resting().watch(hours(12));
        long remaining = bench.judge().remainingMillis();

        bench.judgeBy(Procedure.careful()).watch(seconds(1));

        assertThat(bench.judge().remainingMillis()).isBetween(remaining - 2_000, remaining);
        assertThat(bench.raised()).isEmpty();
    }

    @Test
    void a_new_calibration_does_not_make_a_fall_or_a_recovery() {
        PassageBench fallen = PassageBench.switched()
                .resting()
                .recalibrated()
                .swapFor(0.26, 0.01)
                .watch(hours(1));
        assertThat(fallen.raised()).isEmpty();

        PassageBench stuck = PassageBench.switched()
                .draining()
                .emptied()
                .watch(hours(12).minusMinutes(2))
                .contactWelded();
        stuck.watch(minutes(4)).recalibrated().cell(0.3, 0.06).watch(minutes(65));
        assertThat(stuck.standing()).containsExactly(FindingKind.LOAD_STUCK);
    }

    @Test
    void a_cell_moved_to_another_channel_rests_on_and_is_checked_there() {
        PassageBench bench = PassageBench.switched()
                .resting()
                .watch(hours(20))
                .moved()
                .watch(hours(4))
                .watch(minutes(5));

        assertThat(bench.raised()).isEmpty();
        assertThat(bench.judge().allowed()).contains(Act.TIE_OFF);
    }

    @Test
    void a_cell_moved_to_a_channel_whose_load_is_stuck_is_not_taken_for_rested() {
        PassageBench bench = PassageBench.switched()
                .resting()
                .watch(hours(20))
                .contactWelded()
                .moved();

        bench.watch(hours(5));

        assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);
        assertThat(bench.phase()).isEqualTo(Phase.HELD);
    }
}
