package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;
import static org.ebbwatch.judge.PassageBench.seconds;

import org.junit.jupiter.api.Test;

/** A protection board that opens reads zero while its cell still holds a few per cent. */
class CutOffTest {

    @Test
    void a_collapse_within_one_scan_is_a_switch_that_opened() {
        PassageBench bench =
                PassageBench.switched().draining().drainedTo(3.0, 2.4).watch(hours(1));

        bench.collapsesTo(0, 0).watch(seconds(2));

        assertThat(bench.standing()).containsExactly(FindingKind.CUT_OFF);
        assertThat(bench.phase()).isEqualTo(Phase.HELD);
        assertThat(bench.isLoaded()).as("the load is kept").isTrue();
    }

    @Test
    void a_collapse_over_a_few_scans_is_too() {
        PassageBench bench =
                PassageBench.switched().draining().drainedTo(3.0, 2.4).watch(hours(1));

        bench.collapsesTo(0, 0.9).watch(seconds(2)).collapsesTo(0, 0.1).watch(seconds(2));

        assertThat(bench.standing()).containsExactly(FindingKind.CUT_OFF);
    }

    @Test
    void a_cell_that_falls_as_its_charge_leaves_is_not() {
        PassageBench bench = PassageBench.switched().draining().cell(3.0, 1.3).watch(minutes(20));
        // From 1.2 V to 0.3 V with 0.09 % of 3 Ah = 9.7 As, through 10 ohms 0.075 A: 130 s.
        bench.watchWhile(seconds(130), at -> bench.collapsesTo(3.0, 1.25 - at * 1.0 / 130));

        assertThat(bench.raised()).isEmpty();
        assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
    }

    @Test
    void a_fall_that_coincides_with_the_load_going_on_is_sag() {
        PassageBench bench = PassageBench.switched()
                .cell(3.2, 0.02)
                .checkedIn()
                .act(Act.PUT_ON)
                .watch(minutes(30));

        assertThat(bench.raised()).isEmpty();
        assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
    }

    @Test
    void a_fall_within_seconds_of_the_load_going_on_is_sag() {
        PassageBench bench = PassageBench.switched()
                .cell(3.2, 1.4)
                .checkedIn()
                .act(Act.PUT_ON)
                .watch(seconds(3));

        bench.collapsesTo(3.2, 0.1).watch(minutes(5));

        assertThat(bench.raised()).isEmpty();
    }

    @Test
    void a_fall_across_a_gap_that_charge_cannot_explain_is_a_cut_off() {
        PassageBench bench = PassageBench.switched().draining().cell(3.7, 3.6).watch(minutes(30));

        bench.gap(minutes(10)).collapsesTo(0, 0).watch(seconds(2));

        assertThat(bench.standing()).contains(FindingKind.CUT_OFF);
        assertThat(bench.phase()).isEqualTo(Phase.HELD);
    }

    @Test
    void a_fall_across_a_gap_that_charge_explains_is_not() {
        PassageBench bench = PassageBench.switched().draining().cell(2.6, 2.2).watch(minutes(30));

        bench.gap(hours(2)).collapsesTo(2.6, 0.2).watch(minutes(30));

        assertThat(bench.raised()).containsOnly(FindingKind.SILENT);
        assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
    }

    @Test
    void a_cell_that_cuts_off_while_it_is_held_must_be_proven_again_too() {
        PassageBench bench = PassageBench.switched()
                .draining()
                .emptied()
                .watch(hours(6))
                .gap(hours(1))
                .cell(3.0, 2.4)
                .watch(minutes(15));
        assertThat(bench.phase()).isEqualTo(Phase.HELD);
        assertThat(bench.judge().allowed()).contains(Act.DRAIN_AGAIN);

        bench.collapsesTo(0, 0).watch(minutes(1));

        assertThat(bench.standing()).contains(FindingKind.CUT_OFF);
        assertThat(bench.judge().allowed()).doesNotContain(Act.DRAIN_AGAIN);
    }

    @Test
    void a_cell_that_was_cut_off_must_be_proven_again_before_it_is_drained_again() {
        PassageBench bench =
                PassageBench.switched().draining().drainedTo(3.0, 2.4).watch(hours(1));
        bench.collapsesTo(0, 0).watch(minutes(5));
        assertThat(bench.judge().allowed()).contains(Act.TAKE_OFF).doesNotContain(Act.DRAIN_AGAIN);

        bench.act(Act.TAKE_OFF).watch(minutes(5));
        assertThat(bench.isLoaded()).isFalse();
        assertThat(bench.judge().allowed()).as("the board is still on it").doesNotContain(Act.DRAIN_AGAIN);

        bench.swapFor(2.6, 2.4).watch(minutes(1));
        assertThat(bench.judge().allowed()).contains(Act.DRAIN_AGAIN);
    }

    @Test
    void a_cell_that_drains_to_nothing_while_scans_are_lost_again_and_again_is_not_cut_off() {
        PassageBench bench = PassageBench.switched().draining();
        for (int burst = 0; burst < 30; burst++) {
            bench.cell(3.7, 3.6 - burst * 0.012).gap(seconds(12)).watch(minutes(2), 2_000);
        }
        // From 3.24 V it falls over its knee within a few minutes.
        for (double onLoad : new double[] {3.2, 3.1, 2.8, 2.2, 1.3, 0.5, 0.2, 0.1, 0.08}) {
            bench.cell(1.5, onLoad).gap(seconds(12)).watch(minutes(2), 2_000).gap(seconds(9));
        }

        bench.watch(hours(1));

        assertThat(bench.raised()).containsOnly(FindingKind.SILENT);
        assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
    }

    @Test
    void a_collapse_between_two_lost_scans_is_one_all_the_same() {
        PassageBench bench = PassageBench.switched().draining().drainedTo(3.0, 2.4);
        for (int burst = 0; burst < 30; burst++) {
            bench.gap(seconds(12)).watch(minutes(2), 2_000);
        }

        bench.gap(seconds(12)).collapsesTo(0, 0).watch(seconds(2));

        assertThat(bench.standing()).contains(FindingKind.CUT_OFF);
        assertThat(bench.phase()).isEqualTo(Phase.HELD);
    }

    @Test
    void a_cell_that_drains_while_its_voltage_cannot_be_read_is_not_cut_off() {
        PassageBench bench = PassageBench.switched().draining().drainedTo(3.0, 2.4);

        bench.reads(Double.NaN).watch(hours(3)).collapsesTo(1.0, 0.05);
        bench.readsTheCellAgain().watch(minutes(30));

        assertThat(bench.raised()).containsExactly(FindingKind.SENSOR_FAULT);
        assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
    }
}
