package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;
import static org.ebbwatch.judge.PassageBench.seconds;

import java.util.List;
import org.ebbwatch.judge.BenchChannel.LeadChecks;
import org.ebbwatch.judge.Entry.LeadProof;
import org.ebbwatch.judge.Outcome.PhaseChanged;
import org.ebbwatch.judge.Outcome.Wish;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class ReleaseTest {

    @Test
    void a_switched_cell_that_behaves_goes_all_the_way_without_a_finding() {
        PassageBench bench = PassageBench.switched().releasable();
        assertThat(bench.wishes()).contains(Wish.ASK_RELEASE);

        bench.act(Act.RELEASE);

        assertThat(bench.phase()).isEqualTo(Phase.RELEASED);
        assertThat(bench.raised()).isEmpty();
        assertThat(phases(bench)).containsExactly(Phase.DRAIN, Phase.REST, Phase.TIE_OFF, Phase.RELEASED);
    }

    @Test
    void a_hand_loaded_cell_that_behaves_goes_all_the_way_without_a_finding() {
        PassageBench bench = PassageBench.handLoaded().releasable().act(Act.RELEASE);

        assertThat(bench.phase()).isEqualTo(Phase.RELEASED);
        assertThat(bench.raised()).isEmpty();
        assertThat(bench.wishes()).doesNotContain(Wish.OPEN_LOAD, Wish.CLOSE_LOAD);
    }

    @Test
    void nothing_follows_a_release() {
        PassageBench bench =
                PassageBench.switched().releasable().act(Act.RELEASE).forgetEvents();

        bench.celsius(90).cell(3.9, 3.8).watch(minutes(5)).act(Act.DRAIN_AGAIN);

        assertThat(bench.phase()).isEqualTo(Phase.RELEASED);
        assertThat(bench.events()).isEmpty();
        assertThat(bench.judge().allowed()).isEmpty();
    }

    /** Two simulated cells changed for slow ones while bonded, and one with a charger on it, were released without this. */
    @Test
    void a_parted_cell_that_stands_higher_than_after_its_rest_is_held() {
        PassageBench bench = PassageBench.switched().tiedOff().watch(hours(25)).cell(0.40, 0.03);
        bench.act(Act.PART).watch(minutes(50));

        assertThat(bench.phase()).isEqualTo(Phase.HELD);
        assertThat(bench.judge().reason()).contains("another cell, or something fed it");
        assertThat(bench.raised()).isEmpty();
        assertThat(bench.judge().allowed()).doesNotContain(Act.RELEASE);
    }

    @Test
    void a_parted_cell_that_will_come_back_over_the_limit_goes_back_on_its_load() {
        PassageBench bench = PassageBench.switched().draining().drainedTo(0.45, 0.03);
        bench.watch(hours(12).plusMinutes(2)).watch(hours(24).plusMinutes(2)).act(Act.TIE_OFF);
        assertThat(bench.phase()).isEqualTo(Phase.TIE_OFF);
        bench.watch(hours(25)).recoveringOver(40_000).cell(0.9, 0.03);
        bench.act(Act.PART).watch(hours(5));

        assertThat(bench.raised()).containsExactly(FindingKind.REBOUND);
        assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
    }

    @Nested
    class Before_its_hour_is_over {

        @Test
        void a_parted_cell_is_not_releasable() {
            PassageBench bench = PassageBench.switched().parted().watch(minutes(57));

            assertThat(bench.judge().allowed()).doesNotContain(Act.RELEASE);
            assertThat(bench.act(Act.RELEASE).phase()).isEqualTo(Phase.TIE_OFF);
        }

        @Test
        void a_parted_cell_that_comes_back_goes_back_on_its_load() {
            PassageBench bench = PassageBench.switched().draining().drainedTo(0.48, 0.03);
            bench.watch(hours(12).plusMinutes(2))
                    .watch(hours(24).plusMinutes(2))
                    .act(Act.TIE_OFF);
            bench.watch(hours(25)).act(Act.PART).cell(0.515, 0.03).watch(minutes(58));

            assertThat(bench.raised()).containsExactly(FindingKind.REBOUND);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.isLoaded()).isTrue();
        }
    }

    @Nested
    class Both_proofs {

        @Test
        void are_needed_and_a_parted_cell_that_stands_where_a_load_would_hold_it_is_held() {
            PassageBench bench = PassageBench.switched()
                    .soaked()
                    .cell(0.025, 0.025)
                    .act(Act.PART)
                    .watch(hours(7));

            assertThat(bench.standing()).containsExactly(FindingKind.LEAD_OPEN);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void are_needed_and_a_board_that_cannot_check_the_lead_needs_a_meter() {
            PassageBench bench = PassageBench.switched()
                    .leadChecks(LeadChecks.CANNOT)
                    .resting()
                    .watch(hours(24));
            assertThat(bench.wishes()).contains(Wish.ASK_METER);
            assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);

            bench.meter(0.30).watch(seconds(5));

            assertThat(bench.judge().allowed()).contains(Act.TIE_OFF);
        }

        @Test
        void are_needed_and_a_typed_in_zero_proves_nothing() {
            PassageBench bench = PassageBench.switched()
                    .leadChecks(LeadChecks.CANNOT)
                    .draining()
                    .drainedTo(0.009, 0.001)
                    .watch(hours(12))
                    .watch(hours(25));
            assertThat(bench.phase()).isEqualTo(Phase.REST);

            bench.meter(0.0).meter(0.009).watch(minutes(5));

            assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);
        }

        @Test
        void are_needed_and_a_board_that_never_answers_counts_as_one_that_cannot() {
            PassageBench bench = PassageBench.switched()
                    .leadChecks(LeadChecks.NEVER_ANSWERED)
                    .resting()
                    .watch(hours(24))
                    .watch(minutes(5));

            assertThat(bench.wishes()).contains(Wish.ASK_METER);
            assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);
        }

        @Test
        void are_needed_again_after_the_bond_was_parted() {
            PassageBench bench = PassageBench.switched()
                    .soaked()
                    .leadChecks(LeadChecks.CANNOT)
                    .act(Act.PART)
                    .watch(minutes(70));
            assertThat(bench.judge().allowed()).doesNotContain(Act.RELEASE);
            assertThat(bench.wishes()).contains(Wish.ASK_METER);

            bench.meter(0.30).watch(seconds(5));
            assertThat(bench.judge().allowed()).contains(Act.RELEASE);
        }

        @Test
        void do_not_stand_on_an_old_lead_check() {
            PassageBench bench = PassageBench.switched().releasable().leadChecks(LeadChecks.NEVER_ANSWERED);
            assertThat(bench.judge().allowed()).contains(Act.RELEASE);

            bench.watch(hours(2));

            assertThat(bench.judge().allowed()).doesNotContain(Act.RELEASE);
        }

        @Test
        void are_gone_when_a_check_finds_the_lead_open() {
            PassageBench bench = PassageBench.switched().releasable().leadChecked(LeadProof.OPEN);

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.standing()).containsExactly(FindingKind.LEAD_OPEN);
        }
    }

    @Nested
    class Refused {

        @Test
        void while_a_sensor_is_at_fault() {
            PassageBench bench = PassageBench.switched().releasable();
            assertThat(bench.judge().allowed()).contains(Act.RELEASE);

            bench.celsius(Double.NaN).watch(seconds(10));

            assertThat(bench.judge().allowed()).doesNotContain(Act.RELEASE);
        }

        @Test
        void while_the_board_is_silent() {
            PassageBench bench = PassageBench.switched()
                    .releasable()
                    .nothingSeenFor(seconds(6))
                    .silence();

            assertThat(bench.judge().allowed()).doesNotContain(Act.RELEASE);
        }

        @Test
        void while_the_clock_is_odd() {
            PassageBench bench = PassageBench.switched().releasable().clockOdd(true);

            assertThat(bench.judge().allowed()).doesNotContain(Act.RELEASE);
        }

        @Test
        void while_the_cell_is_warming() {
            PassageBench bench =
                    PassageBench.switched().releasable().celsius(27).watch(minutes(2));

            assertThat(bench.standing()).contains(FindingKind.WARMING);
            assertThat(bench.judge().allowed()).doesNotContain(Act.RELEASE);
        }

        @Test
        void while_the_last_reading_is_over_the_limit() {
            PassageBench bench =
                    PassageBench.switched().releasable().gap(minutes(1)).swapFor(3.9, 3.8);

            bench.watch(seconds(1));

            assertThat(bench.judge().allowed()).doesNotContain(Act.RELEASE);
        }
    }

    @Test
    void a_withdrawn_cell_leaves_without_a_verdict_and_with_its_load_open() {
        PassageBench bench = PassageBench.switched().draining().act(Act.WITHDRAW);

        assertThat(bench.phase()).isEqualTo(Phase.WITHDRAWN);
        assertThat(bench.wishes()).endsWith(Wish.OPEN_LOAD);
        assertThat(bench.judge().allowed()).isEmpty();
    }

    private static List<Phase> phases(PassageBench bench) {
        return bench.events().stream()
                .filter(PhaseChanged.class::isInstance)
                .map(event -> ((PhaseChanged) event).to())
                .toList();
    }
}
