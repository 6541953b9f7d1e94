package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;
import static org.ebbwatch.judge.PassageBench.seconds;

import org.ebbwatch.judge.BenchChannel.Lead;
import org.ebbwatch.judge.BenchChannel.LeadChecks;
import org.ebbwatch.judge.Entry.LeadProof;
import org.ebbwatch.judge.Outcome.Wish;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A lead that falls off reads zero, exactly like success. */
class LeadTest {

    @Nested
    class Off_while_on_the_load {

        @ParameterizedTest
        @EnumSource(LeadChecks.class)
        void reads_a_steady_zero_and_ends_held_for_want_of_a_recovery(LeadChecks checks) {
            PassageBench bench = PassageBench.switched()
                    .leadChecks(checks)
                    .draining()
                    .drainedTo(1.0, 0.5)
                    .watch(hours(1))
                    .lead(Lead.OFF_ACROSS_RESISTOR);

            bench.watch(hours(12)).watch(minutes(70));

            assertThat(bench.standing()).containsExactly(FindingKind.LOAD_STUCK);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            releaseIsOutOfReach(bench);
        }
    }

    @Nested
    class Off_early_in_the_rest {

        @ParameterizedTest
        @EnumSource(LeadChecks.class)
        void before_any_recovery_with_the_resistor_across_is_never_released(LeadChecks checks) {
            PassageBench bench = PassageBench.switched()
                    .leadChecks(checks)
                    .draining()
                    .drainedTo(0.30, 0.002)
                    .watch(hours(12).minusMinutes(2))
                    .lead(Lead.OFF_ACROSS_RESISTOR)
                    .watch(minutes(70));

            staysUnproven(bench, checks);
            releaseIsOutOfReach(bench);
        }

        @ParameterizedTest
        @EnumSource(LeadChecks.class)
        void after_a_small_recovery_with_the_resistor_across_is_never_released(LeadChecks checks) {
            PassageBench bench = PassageBench.switched()
                    .leadChecks(checks)
                    .recoveringOver(3600)
                    .draining()
                    .drainedTo(0.80, 0.002)
                    .watch(hours(12));
            assertThat(bench.watchUntil(() -> bench.phase() == Phase.REST, minutes(15)))
                    .isTrue();
            bench.watch(seconds(50))
                    .lead(Lead.OFF_ACROSS_RESISTOR)
                    .watch(hours(25))
                    .meter(0.0);

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.standing()).containsExactly(FindingKind.LEAD_OPEN);
            releaseIsOutOfReach(bench);
        }

        @Test
        void floating_upward_is_found_by_the_lead_check() {
            PassageBench bench = PassageBench.switched().draining().emptied().watch(hours(12));
            bench.floating(after -> Math.min(0.2, 0.0001 * after)).watch(hours(1));

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.standing()).contains(FindingKind.LEAD_OPEN);
            releaseIsOutOfReach(bench);
        }

        @Test
        void floating_upward_with_nothing_to_check_it_waits_for_a_meter_that_agrees() {
            PassageBench bench = PassageBench.switched()
                    .leadChecks(LeadChecks.CANNOT)
                    .draining()
                    .emptied()
                    .watch(hours(12));
            bench.floating(after -> Math.min(0.2, 0.0001 * after)).watch(hours(25));
            assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);

            bench.meter(0.0).watch(minutes(1));
            assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);
        }
    }

    @Nested
    class Off_late_in_the_rest {

        @ParameterizedTest
        @EnumSource(LeadChecks.class)
        void a_fall_with_the_load_off_holds_the_cell(LeadChecks checks) {
            PassageBench bench = PassageBench.switched()
                    .leadChecks(checks)
                    .resting()
                    .lead(Lead.OFF_ACROSS_RESISTOR)
                    .watch(seconds(30));

            assertThat(bench.standing()).containsExactly(FindingKind.LEAD_OPEN);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            releaseIsOutOfReach(bench);
        }

        @Test
        void a_floating_drift_downward_holds_the_cell() {
            PassageBench bench =
                    PassageBench.switched().leadChecks(LeadChecks.CANNOT).resting();
            bench.floating(after -> 0.3 * Math.exp(-after / 300)).watch(minutes(10));

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.standing()).containsExactly(FindingKind.LEAD_OPEN);
        }

        @Test
        void in_a_gap_is_seen_after_it() {
            PassageBench bench = PassageBench.switched()
                    .resting()
                    .gap(minutes(10))
                    .lead(Lead.OFF_ACROSS_RESISTOR)
                    .watch(minutes(2));

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            releaseIsOutOfReach(bench);
        }

        @Test
        void a_little_droop_over_hours_is_no_fall() {
            PassageBench bench =
                    PassageBench.switched().leadChecks(LeadChecks.HONEST).resting();
            bench.sinkingTo(0.27, hours(10)).watch(hours(10));

            assertThat(bench.raised()).isEmpty();
        }
    }

    @Nested
    class Off_while_tied_off {

        @ParameterizedTest
        @EnumSource(LeadChecks.class)
        void is_found_when_the_bond_is_parted(LeadChecks checks) {
            PassageBench bench = PassageBench.switched()
                    .leadChecks(checks)
                    .resting()
                    .watch(hours(24))
                    .meter(0.30)
                    .watch(seconds(5))
                    .act(Act.TIE_OFF)
                    .watch(hours(12))
                    .lead(Lead.OFF_ACROSS_RESISTOR)
                    .watch(hours(12))
                    .watch(minutes(5))
                    .act(Act.PART);
            assertThat(bench.phase()).isEqualTo(Phase.TIE_OFF);

            bench.watch(hours(7));

            staysUnproven(bench, checks);
            releaseIsOutOfReach(bench);
        }
    }

    @Nested
    class Off_after_the_bond_was_parted {

        @ParameterizedTest
        @EnumSource(LeadChecks.class)
        void before_the_cell_recovered_is_never_released(LeadChecks checks) {
            PassageBench bench = PassageBench.switched()
                    .soaked()
                    .act(Act.PART)
                    .leadChecks(checks)
                    .lead(Lead.OFF_ACROSS_RESISTOR)
                    .watch(hours(7));

            staysUnproven(bench, checks);
            releaseIsOutOfReach(bench);
        }

        @ParameterizedTest
        @EnumSource(LeadChecks.class)
        void after_the_cell_recovered_is_never_released(LeadChecks checks) {
            PassageBench bench = PassageBench.switched()
                    .parted()
                    .watch(minutes(10))
                    .leadChecks(checks)
                    .lead(Lead.OFF_ACROSS_RESISTOR)
                    .watch(minutes(70));

            assertThat(bench.standing()).containsExactly(FindingKind.LEAD_OPEN);
            releaseIsOutOfReach(bench);
        }

        @Test
        void when_it_was_releasable_already_is_not_released_any_more() {
            PassageBench bench = PassageBench.switched()
                    .releasable()
                    .lead(Lead.OFF_ACROSS_RESISTOR)
                    .watch(seconds(20));

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            releaseIsOutOfReach(bench);
        }

        @Test
        void floating_is_found_by_the_lead_check() {
            PassageBench bench = PassageBench.switched().soaked().act(Act.PART);
            bench.floating(after -> Math.min(0.3, 0.001 * after)).watch(minutes(70));

            assertThat(bench.standing()).contains(FindingKind.LEAD_OPEN);
            releaseIsOutOfReach(bench);
        }
    }

    @Nested
    class The_lead_check {

        @Test
        void that_finds_the_lead_open_opens_the_load_and_holds() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .leadChecked(LeadProof.OPEN)
                    .watch(seconds(3));

            assertThat(bench.standing()).contains(FindingKind.LEAD_OPEN);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.isLoaded()).isFalse();
        }

        @Test
        void says_nothing_while_the_leads_are_bonded() {
            PassageBench bench = PassageBench.switched().tiedOff().leadChecked(LeadProof.OPEN);

            assertThat(bench.raised()).isEmpty();
            assertThat(bench.phase()).isEqualTo(Phase.TIE_OFF);
        }

        @Test
        void that_could_not_be_done_is_no_finding() {
            PassageBench bench = PassageBench.switched()
                    .resting()
                    .leadChecked(LeadProof.NOT_DONE)
                    .watch(minutes(5));

            assertThat(bench.raised()).isEmpty();
        }
    }

    @Nested
    class A_meter {

        @Test
        void that_reads_much_more_than_the_board_shows_the_board_is_not_attached() {
            PassageBench bench = PassageBench.switched()
                    .leadChecks(LeadChecks.CANNOT)
                    .resting()
                    .watch(hours(24))
                    .meter(2.9);

            assertThat(bench.standing()).containsExactly(FindingKind.LEAD_OPEN);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void that_reads_a_little_otherwise_proves_nothing_and_accuses_nobody() {
            PassageBench bench = PassageBench.switched()
                    .leadChecks(LeadChecks.CANNOT)
                    .resting()
                    .watch(hours(24))
                    .meter(0.28)
                    .watch(seconds(5));

            assertThat(bench.raised()).isEmpty();
            assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);
        }
    }

    /** Reads like a truly empty cell: unproven, and where the board cannot tell either, a person is asked to measure. */
    private static void staysUnproven(PassageBench bench, LeadChecks checks) {
        assertThat(bench.standing()).isEmpty();
        assertThat(bench.wishes().contains(Wish.ASK_METER)).isEqualTo(checks != LeadChecks.HONEST || isParted(bench));
    }

    private static boolean isParted(PassageBench bench) {
        return bench.phase() == Phase.TIE_OFF;
    }

    private static void releaseIsOutOfReach(PassageBench bench) {
        bench.act(Act.TIE_OFF)
                .watch(hours(25))
                .meter(0.0)
                .act(Act.PART)
                .watch(hours(2))
                .act(Act.RELEASE);
        assertThat(bench.phase()).isNotEqualTo(Phase.RELEASED);
        assertThat(bench.judge().allowed()).doesNotContain(Act.RELEASE, Act.TIE_OFF, Act.PART);
    }
}
