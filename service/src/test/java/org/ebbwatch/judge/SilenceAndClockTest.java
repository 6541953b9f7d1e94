package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;
import static org.ebbwatch.judge.PassageBench.seconds;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class SilenceAndClockTest {

    @Nested
    class SILENT {

        @Test
        void is_raised_by_a_silence_and_clears_with_the_next_scan() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .nothingSeenFor(seconds(6))
                    .silence();
            assertThat(bench.standing()).containsExactly(FindingKind.SILENT);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);

            bench.watch(seconds(1));

            assertThat(bench.standing()).isEmpty();
        }

        @Test
        void is_raised_for_a_gap_that_was_long_enough() {
            PassageBench bench =
                    PassageBench.switched().draining().gap(seconds(6)).watch(seconds(1));

            assertThat(bench.raised()).containsExactly(FindingKind.SILENT);
            assertThat(bench.standing()).isEmpty();
        }

        @Test
        void is_not_raised_for_a_frame_or_two_that_were_lost() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .gap(seconds(2))
                    .watch(seconds(30))
                    .nothingSeenFor(seconds(4))
                    .watch(seconds(30));

            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void is_raised_only_once_by_a_silence_and_the_gap_that_follows() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .nothingSeenFor(seconds(6))
                    .silence()
                    .gap(minutes(5))
                    .watch(minutes(1));

            assertThat(bench.raised()).containsExactly(FindingKind.SILENT);
        }

        @Test
        void is_not_raised_for_a_board_read_every_two_seconds_that_lost_a_frame() {
            PassageBench bench = PassageBench.switched()
                    .checkedIn()
                    .act(Act.PUT_ON)
                    .watch(minutes(10), 2_000)
                    .nothingSeenFor(seconds(2))
                    .watch(minutes(1), 2_000);

            assertThat(bench.raised()).isEmpty();
        }
    }

    @Nested
    class CLOCK_ODD {

        @Test
        void is_raised_and_clears_as_the_clock_is_judged() {
            PassageBench bench = PassageBench.switched().draining().clockOdd(true);
            assertThat(bench.standing()).containsExactly(FindingKind.CLOCK_ODD);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.isLoaded()).isTrue();

            bench.clockOdd(false);
            assertThat(bench.standing()).isEmpty();
        }

        @Test
        void stops_the_watch_clocks() {
            PassageBench bench = PassageBench.switched()
                    .resting()
                    .watch(hours(12))
                    .clockOdd(true)
                    .watch(hours(13));
            assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);

            bench.clockOdd(false).watch(hours(12)).watch(minutes(2));
            assertThat(bench.judge().allowed()).contains(Act.TIE_OFF);
        }

        @Test
        void is_not_raised_by_a_clock_found_good() {
            PassageBench bench = PassageBench.switched().draining().clockOdd(false);

            assertThat(bench.events().stream().filter(Outcome.Cleared.class::isInstance))
                    .isEmpty();
        }
    }
}
