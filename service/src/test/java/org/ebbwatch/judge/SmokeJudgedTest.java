package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;

import org.ebbwatch.judge.Outcome.Wish;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** What smoke on the rack does to a passage: its load opens, and nothing but a person closes it again. */
class SmokeJudgedTest {
    private static PassageBench smoke(PassageBench bench) {
        return bench.fold(new Entry.Smoke(bench.millis()));
    }

    @Nested
    class In_drain {
        @Test
        void the_load_opens_and_the_cell_is_held_without_a_finding() {
            PassageBench bench = smoke(PassageBench.switched().draining()).watch(hours(3));

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.judge().reason()).isEqualTo(Passage.SMOKE);
            assertThat(bench.isLoaded()).isFalse();
            assertThat(bench.raised()).doesNotContain(FindingKind.LOAD_LOST, FindingKind.LOAD_STUCK);
        }

        @Test
        void a_person_drains_it_again() {
            PassageBench bench = smoke(PassageBench.switched().draining())
                    .watch(minutes(5))
                    .act(Act.DRAIN_AGAIN)
                    .watch(minutes(5));

            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.isLoaded()).isTrue();
        }

        @Test
        void a_cell_that_was_held_on_its_load_comes_off_it_too() {
            PassageBench bench = PassageBench.switched().draining();
            bench.fold(new Entry.JudgedAnew(bench.millis(), Phase.REST)).watch(minutes(5));
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.isLoaded()).isTrue();

            smoke(bench).watch(minutes(1));

            assertThat(bench.isLoaded()).isFalse();
        }

        @Test
        void a_cell_on_a_load_that_hands_put_on_drains_on() {
            PassageBench bench =
                    smoke(PassageBench.handLoaded().draining()).forgetEvents().watch(minutes(30));

            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.events()).isEmpty();
        }
    }

    @Nested
    class In_rest {
        @Test
        void the_rest_goes_on() {
            PassageBench bench =
                    smoke(PassageBench.switched().resting()).forgetEvents().watch(hours(1));

            assertThat(bench.phase()).isEqualTo(Phase.REST);
            assertThat(bench.events()).noneMatch(Outcome.PhaseChanged.class::isInstance);
        }

        @Test
        void a_cell_that_comes_back_is_held_and_not_put_on_its_load() {
            PassageBench bench = smoke(PassageBench.switched().resting()).forgetEvents();

            bench.cell(0.9, 0.05).watch(hours(2));

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.raised()).contains(FindingKind.REBOUND);
            assertThat(bench.wishes()).doesNotContain(Wish.CLOSE_LOAD);
            assertThat(bench.act(Act.DRAIN_AGAIN).watch(minutes(5)).isLoaded()).isTrue();
        }
    }

    @Test
    void a_spark_at_tie_off_is_taken_down_and_closes_no_load() {
        PassageBench bench =
                smoke(PassageBench.switched().tiedOff()).act(Act.SPARK).watch(minutes(5));

        assertThat(bench.phase()).isEqualTo(Phase.HELD);
        assertThat(bench.isLoaded()).isFalse();
    }
}
