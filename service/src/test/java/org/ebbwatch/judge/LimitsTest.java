package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;
import static org.ebbwatch.judge.PassageBench.seconds;

import java.time.Duration;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** The limits of the rules that keep people safe, each from both sides. */
class LimitsTest {

    @Nested
    class REVERSED {

        /** U is 2 mV, two deviations of the noise are 0.06 mV. */
        @Test
        void begins_where_uncertainty_and_noise_leave_less_than_minus_twenty_millivolts() {
            PassageBench bench = PassageBench.switched().reads(-0.0220).watch(minutes(1));
            assertThat(bench.raised()).isEmpty();

            bench.reads(-0.0222).watch(minutes(1));

            assertThat(bench.standing()).contains(FindingKind.REVERSED);
        }

        @Test
        void needs_two_seconds_however_quick_the_scans_come() {
            PassageBench bench = PassageBench.switched().watch(seconds(10)).reads(-0.5);
            bench.watch(seconds(2), 100);
            assertThat(bench.raised()).as("1.9 s after the first").doesNotContain(FindingKind.REVERSED);

            bench.watch(Duration.ofMillis(100), 100);

            assertThat(bench.standing()).contains(FindingKind.REVERSED);
        }

        @Test
        void needs_two_scans_however_slowly_they_come() {
            PassageBench bench =
                    PassageBench.switched().watch(seconds(20), 4_000).reads(-0.5);
            bench.watch(seconds(4), 4_000);
            assertThat(bench.raised()).doesNotContain(FindingKind.REVERSED);

            bench.watch(seconds(4), 4_000);

            assertThat(bench.standing()).contains(FindingKind.REVERSED);
        }

        @Test
        void is_counted_anew_after_a_reading_that_is_not() {
            PassageBench bench = PassageBench.switched().watch(seconds(10));
            for (int turn = 0; turn < 5; turn++) {
                bench.reads(-0.5).watch(seconds(2)).reads(3.7).watch(seconds(1));
            }

            assertThat(bench.raised()).doesNotContain(FindingKind.REVERSED);
        }
    }

    @Nested
    class CUT_OFF {

        /** 0.03 % of 3 Ah are 3.24 As, through 10 ohms at 0.75 V in the mean 43 s. */
        @Test
        void is_a_fall_to_a_quarter_of_its_voltage_with_less_than_a_third_of_a_thousandth_of_its_charge() {
            assertThat(fallingIn(36).standing()).contains(FindingKind.CUT_OFF);
            assertThat(fallingIn(52).raised()).isEmpty();
        }

        /** 0.05 % of 3 Ah are 5.4 As, at 0.36 A 15 s. */
        @Test
        void can_be_told_from_sag_once_a_twentieth_of_a_per_cent_has_left() {
            assertThat(collapsingAfter(13, 3.6).raised()).isEmpty();
            assertThat(collapsingAfter(20, 3.6).standing()).contains(FindingKind.CUT_OFF);
        }

        @Test
        void can_be_told_from_sag_only_by_what_has_left_since_the_load_last_went_on() {
            PassageBench bench = PassageBench.switched().draining().watch(hours(2));
            bench.act(Act.TAKE_OFF).watchUntil(() -> !bench.isLoaded(), seconds(5));
            assertThat(bench.watchUntil(bench::isLoaded, minutes(1))).isTrue();

            bench.watch(seconds(3)).collapsesTo(3.7, 0.1).watch(seconds(5));

            assertThat(bench.raised()).doesNotContain(FindingKind.CUT_OFF);
        }

        @Test
        void does_not_begin_above_three_tenths_of_a_volt() {
            PassageBench bench = PassageBench.switched().draining().drainedTo(3.0, 2.4);

            bench.collapsesTo(3.0, 0.302).watch(minutes(2));

            assertThat(bench.raised()).doesNotContain(FindingKind.CUT_OFF);
        }

        @Test
        void does_not_begin_from_below_one_volt_and_a_fifth() {
            PassageBench bench =
                    PassageBench.switched().draining().drainedTo(3.0, 1.195).watch(minutes(5));

            bench.collapsesTo(3.0, 0.1).watch(minutes(1));

            assertThat(bench.raised()).doesNotContain(FindingKind.CUT_OFF);
        }

        private static PassageBench fallingIn(int seconds) {
            PassageBench bench =
                    PassageBench.switched().draining().cell(3.0, 1.25).watch(minutes(20));
            bench.watchWhile(seconds(seconds), at -> bench.collapsesTo(3.0, 1.2 - at * 0.905 / seconds));
            return bench;
        }

        private static PassageBench collapsingAfter(int seconds, double onLoad) {
            PassageBench bench = PassageBench.switched()
                    .cell(3.7, onLoad)
                    .checkedIn()
                    .act(Act.PUT_ON)
                    .watch(seconds(seconds));
            return bench.collapsesTo(3.7, 0.1).watch(seconds(5));
        }
    }

    @Nested
    class LEAD_OPEN {

        /** A cell that rests at 0.3 V may lose 5 % of it, 15 mV. */
        @Test
        void begins_with_a_fall_of_more_than_a_twentieth_of_the_highest_rest() {
            PassageBench bench = PassageBench.switched().resting().watch(hours(1));
            bench.reads(0.286).watch(minutes(1));
            assertThat(bench.raised()).as("14 mV").isEmpty();

            bench.reads(0.283).watch(minutes(1));

            assertThat(bench.standing()).contains(FindingKind.LEAD_OPEN);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }
    }

    @Nested
    class The_watch_of_a_bond {

        @Test
        void begins_again_when_the_cell_warms_and_what_was_asked_is_taken_back() {
            PassageBench bench = PassageBench.switched().soaked();
            assertThat(bench.judge().allowed()).contains(Act.PART);

            bench.warmTo(26.5, minutes(20)).watch(minutes(1));
            assertThat(bench.standing()).containsExactly(FindingKind.WARMING);
            assertThat(bench.judge().allowed()).doesNotContain(Act.PART);
            bench.warmTo(22, minutes(40)).watch(hours(23));
            assertThat(bench.judge().allowed()).doesNotContain(Act.PART);
            bench.watch(hours(2));

            assertThat(bench.judge().allowed()).contains(Act.PART);
        }

        @Test
        void ends_with_twelve_hours_in_which_its_sensor_was_never_at_fault() {
            PassageBench bench = PassageBench.switched().tiedOff().watch(hours(23));
            bench.celsius(Double.NaN).watch(minutes(1)).celsius(22).watch(minutes(2));

            bench.watch(hours(11)).watch(minutes(55));
            assertThat(bench.judge().allowed()).doesNotContain(Act.PART);
            bench.watch(minutes(10));

            assertThat(bench.judge().allowed()).contains(Act.PART);
        }
    }

    @Nested
    class A_release {

        @Test
        void needs_an_hour_with_the_bond_parted() {
            PassageBench bench = PassageBench.switched()
                    .soaked()
                    .act(Act.PART)
                    .watch(minutes(30))
                    .watch(minutes(29));
            bench.watch(seconds(59));
            assertThat(bench.judge().allowed()).doesNotContain(Act.RELEASE);

            bench.watch(minutes(2));

            assertThat(bench.judge().allowed()).contains(Act.RELEASE);
        }

        @Test
        void needs_the_last_reading_and_its_uncertainty_below_the_limit() {
            PassageBench bench = PassageBench.switched().releasable();

            bench.reads(0.4985).watch(seconds(1));

            assertThat(bench.judge().allowed()).doesNotContain(Act.RELEASE);
            bench.reads(0.4975).watch(seconds(1));
            assertThat(bench.judge().allowed()).contains(Act.RELEASE);
        }
    }
}
