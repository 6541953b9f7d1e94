package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;
import static org.ebbwatch.judge.PassageBench.seconds;

import org.ebbwatch.judge.Outcome.Wish;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class CheckInTest {

    @Nested
    class A_cell_seen_with_the_right_polarity {

        @Test
        void may_be_put_on_after_ten_seconds_above_one_volt() {
            PassageBench bench = PassageBench.switched().watch(seconds(9));
            assertThat(bench.wishes()).doesNotContain(Wish.ASK_PUT_ON);

            bench.watch(seconds(3));

            assertThat(bench.wishes()).containsExactly(Wish.ASK_PUT_ON);
            assertThat(bench.phase()).isEqualTo(Phase.CHECK_IN);
        }

        @Test
        void goes_to_DRAIN_when_it_is_put_on_and_its_switched_load_closes() {
            PassageBench bench = PassageBench.switched().checkedIn().act(Act.PUT_ON);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.judge().isLoadWanted()).isTrue();
            assertThat(bench.wishes()).contains(Wish.CLOSE_LOAD);

            bench.watch(seconds(5));

            assertThat(bench.isLoaded()).isTrue();
            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void is_not_asked_for_its_load_again_once_a_person_has_put_it_on_by_hand() {
            PassageBench bench = PassageBench.handLoaded().checkedIn().forgetEvents();

            bench.act(Act.PUT_ON).watch(minutes(10));

            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.wishes()).doesNotContain(Wish.ASK_PUT_ON, Wish.CLOSE_LOAD);
            assertThat(bench.judge().standingWishes()).doesNotContain(Wish.ASK_PUT_ON);
        }
    }

    @Nested
    class A_cell_never_proven {

        @Test
        void is_held_when_it_reads_zero_because_its_disconnect_is_open() {
            PassageBench bench = PassageBench.switched().cell(0, 0).watch(minutes(5));
            assertThat(bench.wishes()).doesNotContain(Wish.ASK_PUT_ON);

            bench.act(Act.PUT_ON).watch(minutes(5));

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.judge().reason()).contains("not proven");
            assertThat(bench.isLoaded()).isFalse();
            assertThat(bench.judge().allowed()).containsExactly(Act.WITHDRAW);
        }

        @Test
        void is_held_when_it_is_reversed_on_a_converter_that_knows_nothing_below_zero() {
            PassageBench bench = PassageBench.switched()
                    .unipolar()
                    .cell(-3.7, -3.6)
                    .watch(minutes(5))
                    .act(Act.PUT_ON)
                    .watch(hours(1));

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.isLoaded()).isFalse();
            assertThat(bench.judge().allowed()).doesNotContain(Act.DRAIN_AGAIN);
        }

        @Test
        void is_held_when_it_stood_above_one_volt_for_a_moment_only() {
            PassageBench bench = PassageBench.switched()
                    .cell(1.5, 1.4)
                    .watch(seconds(8))
                    .swapFor(0.6, 0.5)
                    .watch(seconds(30))
                    .act(Act.PUT_ON);

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void is_held_when_its_uncertainty_reaches_below_one_volt() {
            PassageBench bench = PassageBench.switched()
                    .converter(0.05, 1e-3)
                    .cell(1.04, 1.0)
                    .watch(minutes(2))
                    .act(Act.PUT_ON);

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void may_be_drained_once_it_is_seen_above_one_volt_after_all() {
            PassageBench bench =
                    PassageBench.switched().cell(0, 0).watch(minutes(1)).act(Act.PUT_ON);

            bench.swapFor(3.7, 3.6).watch(minutes(1));

            assertThat(bench.judge().allowed()).contains(Act.DRAIN_AGAIN);
            bench.act(Act.DRAIN_AGAIN).watch(minutes(1));
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.isLoaded()).isTrue();
        }
    }

    @Test
    void a_proof_does_not_reach_across_a_gap() {
        PassageBench bench = PassageBench.switched()
                .watch(seconds(6))
                .gap(minutes(1))
                .watch(seconds(6))
                .act(Act.PUT_ON);

        assertThat(bench.phase()).isEqualTo(Phase.HELD);
    }

    @Test
    void a_load_that_is_on_before_it_should_be_is_asked_off() {
        PassageBench bench = PassageBench.switched().switchFoundOn().watch(seconds(10));

        assertThat(bench.wishes()).contains(Wish.OPEN_LOAD);
        assertThat(bench.isLoaded()).isFalse();
        assertThat(bench.phase()).isEqualTo(Phase.CHECK_IN);
    }

    @Test
    void a_load_that_is_on_before_it_should_be_and_stays_on_is_stuck() {
        PassageBench bench = PassageBench.switched()
                .boardIgnoresLoadCommands()
                .switchFoundOn()
                .watch(minutes(2));

        assertThat(bench.standing()).containsExactly(FindingKind.LOAD_STUCK);
        assertThat(bench.phase()).isEqualTo(Phase.HELD);
    }

    @Test
    void a_cell_warm_at_check_in_is_told() {
        PassageBench bench = PassageBench.switched().celsius(27.5).ambient(21).watch(seconds(30));

        assertThat(bench.standing()).containsExactly(FindingKind.WARMING);
    }
}
