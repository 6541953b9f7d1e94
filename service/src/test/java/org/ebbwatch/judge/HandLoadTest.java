package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;
import static org.ebbwatch.judge.PassageBench.seconds;

import java.util.List;
import org.ebbwatch.judge.BenchChannel.Lead;
import org.ebbwatch.judge.Outcome.PhaseChanged;
import org.ebbwatch.judge.Outcome.Wish;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class HandLoadTest {

    private static List<String> changes(PassageBench bench) {
        return bench.events().stream()
                .filter(PhaseChanged.class::isInstance)
                .map(event -> ((PhaseChanged) event).to() + " " + ((PhaseChanged) event).reason())
                .toList();
    }

    @Nested
    class A_load_taken_off_without_a_word {

        @Test
        void while_draining_means_rest_and_the_rebound_that_comes_of_it() {
            PassageBench bench = PassageBench.handLoaded().draining().forgetEvents();

            bench.handLoadQuietly(false).watch(minutes(10));

            assertThat(changes(bench).get(0))
                    .isEqualTo("REST the load seems to have been taken off early; if its lead fell off, put it back");
            assertThat(bench.raised()).containsExactly(FindingKind.REBOUND);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.judge().isLoadOn()).isFalse();
            assertThat(bench.wishes()).contains(Wish.ASK_PUT_ON);
        }

        @Test
        void after_its_hold_means_a_rest_that_counts() {
            PassageBench bench = PassageBench.handLoaded()
                    .draining()
                    .emptied()
                    .watch(hours(12))
                    .watch(minutes(1))
                    .forgetEvents();

            bench.handLoadQuietly(false).watch(hours(24)).watch(minutes(30));

            assertThat(changes(bench))
                    .containsExactly("REST the load seems to have been taken off after its hold;"
                            + " if its lead fell off, put it back");
            assertThat(bench.wishes()).contains(Wish.ASK_TIE_OFF);
            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void proves_nothing_by_the_step_it_was_recognised_by() {
            PassageBench bench = PassageBench.handLoaded()
                    .draining()
                    .emptied()
                    .watch(hours(12))
                    .watch(minutes(1));
            bench.cell(0.30, 0.08).watch(minutes(3));
            assertThat(bench.phase()).as(bench.judge().reason()).isEqualTo(Phase.REST);

            bench.watch(hours(2));

            assertThat(bench.isLoaded()).isTrue();
            assertThat(bench.standing()).containsExactly(FindingKind.LOAD_STUCK);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void is_no_lead_that_fell_off_and_floats_up_which_is_LEAD_OPEN() {
            PassageBench bench = PassageBench.handLoaded()
                    .draining()
                    .emptied()
                    .watch(hours(12))
                    .watch(minutes(1));

            bench.floating(seconds -> Math.min(0.2, 0.03 + 0.01 * seconds)).handLoadQuietly(false);
            bench.watch(minutes(5));

            assertThat(bench.standing()).containsExactly(FindingKind.LEAD_OPEN);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void is_no_lead_that_fell_off_and_reads_nought() {
            PassageBench bench = PassageBench.handLoaded().draining().lead(Lead.OFF_ACROSS_RESISTOR);

            bench.watch(minutes(20));

            assertThat(bench.raised()).containsExactly(FindingKind.CUT_OFF);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void is_told_by_the_amperes_where_they_are_measured() {
            PassageBench bench =
                    PassageBench.handLoaded().readsCurrent().cell(3.7, 3.7).draining();

            bench.handLoadQuietly(false).watch(minutes(2));

            assertThat(bench.raised()).containsExactly(FindingKind.REBOUND);
            assertThat(bench.judge().isLoadOn()).isFalse();
        }

        @Test
        void is_waited_for_while_work_is_announced() {
            PassageBench bench = PassageBench.handLoaded().draining().announce(minutes(10));

            bench.handLoadQuietly(false).watch(minutes(9));
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.judge().isLoadOn()).isTrue();

            bench.watch(minutes(3));
            assertThat(bench.raised()).containsExactly(FindingKind.REBOUND);
        }

        @Test
        void leaves_minutes_to_say_so_before_the_hold_counts_as_broken() {
            PassageBench bench = PassageBench.handLoaded()
                    .draining()
                    .emptied()
                    .watch(hours(12))
                    .watch(minutes(1));

            bench.handLoadQuietly(false).watch(seconds(20)).forgetEvents().act(Act.TAKE_OFF);

            assertThat(changes(bench)).containsExactly("REST taken off after its hold");
        }

        @Test
        void does_not_keep_a_hold_that_a_risen_voltage_broke() {
            PassageBench bench = PassageBench.handLoaded()
                    .draining()
                    .emptied()
                    .watch(hours(12))
                    .watch(minutes(1));
            assertThat(bench.wishes()).contains(Wish.ASK_TAKE_OFF);

            bench.announce(hours(1)).cell(0.4, 0.2).watch(minutes(7));

            assertThat(bench.judge().standingWishes()).doesNotContain(Wish.ASK_TAKE_OFF);
        }
    }

    @Nested
    class A_load_put_on_without_a_word {

        @Test
        void at_check_in_means_that_it_drains() {
            PassageBench bench = PassageBench.handLoaded().checkedIn().forgetEvents();

            bench.handLoadQuietly(true).watch(minutes(2));

            assertThat(changes(bench)).containsExactly("DRAIN the load seems to have been put on");
            assertThat(bench.judge().isLoadOn()).isTrue();
            bench.watch(hours(1));
            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void at_check_in_of_a_cell_not_proven_is_only_asked_about() {
            PassageBench bench = PassageBench.handLoaded().cell(0.9, 0.8).checkedIn();

            bench.handLoadQuietly(true).watch(minutes(2));

            assertThat(bench.judge().seems()).contains(LoadStep.SEEMS_ON);
            assertThat(bench.phase()).isEqualTo(Phase.CHECK_IN);
        }

        @Test
        void after_a_rebound_is_what_was_asked_for() {
            PassageBench bench =
                    PassageBench.handLoaded().draining().act(Act.TAKE_OFF).watch(minutes(10));
            assertThat(bench.judge().standingWishes()).contains(Wish.ASK_PUT_ON);
            int round = bench.judge().round();

            bench.handLoadQuietly(true).watch(minutes(2));

            assertThat(bench.judge().isLoadOn()).isTrue();
            assertThat(bench.judge().reason()).isEqualTo("the load seems to have been put on");
            assertThat(bench.judge().standingWishes()).isEmpty();
            assertThat(bench.judge().round()).isEqualTo(round);
        }

        @Test
        void in_rest_is_told_apart_from_a_lead_that_came_off() {
            PassageBench bench =
                    PassageBench.handLoaded(PassageBench.restedBelow(0.9)).resting();
            bench.cell(0.85, 0.7).watch(hours(1));
            assertThat(bench.phase()).isEqualTo(Phase.REST);

            bench.handLoadQuietly(true).watch(minutes(2));

            assertThat(bench.raised()).isEmpty();
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.judge().isLoadOn()).isTrue();
        }

        @Test
        void below_half_a_volt_cannot_be_told_from_a_lead_that_came_off() {
            PassageBench bench = PassageBench.handLoaded().resting();

            bench.handLoadQuietly(true).watch(minutes(2));

            assertThat(bench.standing()).containsExactly(FindingKind.LEAD_OPEN);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }
    }

    @Test
    void a_held_cell_is_only_asked_about() {
        PassageBench bench = PassageBench.handLoaded().draining().celsius(61).watch(minutes(3));
        assertThat(bench.phase()).isEqualTo(Phase.HELD);

        bench.handLoadQuietly(false).watch(minutes(2));

        assertThat(bench.judge().seems()).contains(LoadStep.SEEMS_OFF);
        assertThat(bench.phase()).isEqualTo(Phase.HELD);
    }
}
