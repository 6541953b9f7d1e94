package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;
import static org.ebbwatch.judge.PassageBench.seconds;

import java.time.Duration;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

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

    /** A board that is slow by nature is no board that is silent. */
    @Nested
    class A_board_that_scans_once_in_ten_seconds_or_a_minute {

        @ParameterizedTest
        @ValueSource(longs = {10_000, 60_000})
        void is_watched_all_the_time(long intervalMillis) {
            PassageBench bench = PassageBench.switched().watch(minutes(10), intervalMillis);
            bench.act(Act.PUT_ON)
                    .watch(minutes(30), intervalMillis)
                    .cell(0.30, 0.03)
                    .watch(minutes(20), intervalMillis)
                    .watch(hours(12).plusMinutes(10), intervalMillis)
                    .watch(hours(24).plusMinutes(10), intervalMillis);

            assertThat(bench.raised()).isEmpty();
            assertThat(bench.judge().allowed()).contains(Act.TIE_OFF);
        }

        @ParameterizedTest
        @ValueSource(longs = {10_000, 60_000})
        void is_silent_after_three_intervals(long intervalMillis) {
            PassageBench bench = PassageBench.switched().watch(minutes(30), intervalMillis);
            bench.nothingSeenFor(Duration.ofMillis(2 * intervalMillis)).watch(minutes(5), intervalMillis);
            assertThat(bench.raised()).isEmpty();

            bench.nothingSeenFor(Duration.ofMillis(3 * intervalMillis)).watch(minutes(5), intervalMillis);
            assertThat(bench.raised()).containsExactly(FindingKind.SILENT);
        }

        @Test
        void is_not_what_a_link_becomes_that_loses_two_scans_of_three_now_and_then() {
            PassageBench bench = PassageBench.switched().checkedIn().act(Act.PUT_ON);
            for (int minute = 0; minute < 60; minute++) {
                bench.watch(seconds(50), 3_000).watch(seconds(10));
            }
            bench.nothingSeenFor(seconds(7)).watch(seconds(10));

            assertThat(bench.raised()).containsExactly(FindingKind.SILENT);
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
