package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;

import java.time.Duration;
import org.ebbwatch.judge.BenchChannel.Lead;
import org.ebbwatch.judge.BenchChannel.LeadChecks;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** A cell that is so empty that next to nothing comes back looks much like a lead that came off or a load still on. */
class TrulyEmptyTest {
    private static final Duration HOLD = hours(12).plusMinutes(2);

    @Nested
    class In_its_rest {

        @Test
        void it_is_proven_by_a_recovery_that_only_the_mean_resolves() {
            PassageBench bench = fine().draining().drainedTo(0.0028, 0.0020).watch(HOLD);
            assertThat(bench.phase()).isEqualTo(Phase.REST);

            bench.watch(hours(24));

            assertThat(bench.raised()).isEmpty();
            assertThat(bench.judge().allowed()).contains(Act.TIE_OFF);
        }

        @Test
        void it_is_proven_behind_much_noise_too() {
            PassageBench bench = PassageBench.switched()
                    .converter(2e-3, 4e-3)
                    .draining()
                    .drainedTo(0.020, 0.007)
                    .watch(HOLD)
                    .watch(hours(24));

            assertThat(bench.raised()).isEmpty();
            assertThat(bench.judge().allowed()).contains(Act.TIE_OFF);
        }

        @Test
        void without_any_recovery_it_neither_rings_nor_may_it_be_tied_off_and_a_meter_is_asked_for_at_the_end() {
            PassageBench bench =
                    PassageBench.switched().draining().drainedTo(0.002, 0.002).watch(HOLD);

            bench.watch(hours(23).plusMinutes(50));
            assertThat(bench.raised()).isEmpty();
            assertThat(bench.wishes()).doesNotContain(Wish.ASK_METER);

            bench.watch(hours(1));
            assertThat(bench.raised()).isEmpty();
            assertThat(bench.phase()).isEqualTo(Phase.REST);
            assertThat(bench.wishes()).contains(Wish.ASK_METER);
            assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);
        }

        @Test
        void without_any_recovery_and_without_a_lead_check_a_meter_is_asked_for_within_the_hour() {
            PassageBench bench = PassageBench.switched()
                    .leadChecks(LeadChecks.CANNOT)
                    .draining()
                    .drainedTo(0.002, 0.002)
                    .watch(HOLD);
            assertThat(bench.watch(minutes(50)).wishes()).doesNotContain(Wish.ASK_METER);

            bench.watch(minutes(15));

            assertThat(bench.raised()).isEmpty();
            assertThat(bench.wishes()).contains(Wish.ASK_METER);
            assertThat(bench.watch(hours(25)).judge().allowed()).doesNotContain(Act.TIE_OFF);
        }

        @Test
        void noise_alone_is_no_lead_that_came_off() {
            PassageBench bench = PassageBench.switched()
                    .converter(2e-4, 8e-3)
                    .draining()
                    .drainedTo(0.002, 0.002)
                    .watch(HOLD);
            assertThat(bench.phase()).isEqualTo(Phase.REST);

            bench.watch(hours(24));

            assertThat(bench.raised()).doesNotContain(FindingKind.LEAD_OPEN);
        }

        @Test
        void a_drift_with_the_load_still_on_is_no_recovery() {
            PassageBench bench =
                    fine().draining().drainedTo(0.30, 0.0020).watch(hours(12).minusMinutes(2));
            bench.contactWelded().watch(minutes(3));
            assertThat(bench.phase()).isEqualTo(Phase.REST);

            for (int minute = 0; minute < 180; minute++) {
                bench.cell(0.30, 0.0020 + minute * 10e-6).watch(minutes(1), 4_000);
            }

            assertThat(bench.watch(hours(24)).judge().allowed()).doesNotContain(Act.TIE_OFF);
        }

        @Test
        void that_is_flat_to_the_end_it_is_held_without_ringing_when_a_person_has_measured_and_not_before() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .drainedTo(0.30, 0.002)
                    .watch(hours(12).minusMinutes(2));
            bench.contactWelded().watch(hours(12)).meter(0.002).watch(hours(15));
            assertThat(bench.raised()).isEmpty();

            bench.meter(0.002);

            assertThat(bench.raised()).isEmpty();
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.judge().reason()).contains("too empty to be told from a load that is stuck");
        }

        @Test
        void that_is_flat_to_the_end_it_is_held_when_a_longer_hold_may_have_emptied_it_so_far() {
            PassageBench bench =
                    PassageBench.switched().draining().drainedTo(0.9, 0.002).watch(HOLD.plusMinutes(20));
            assertThat(bench.raised()).containsExactly(FindingKind.REBOUND);
            bench.drainedTo(0.002, 0.002).watch(hours(50));
            assertThat(bench.phase()).isEqualTo(Phase.REST);

            bench.meter(0.002);

            assertThat(bench.raised()).containsExactly(FindingKind.REBOUND);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.judge().allowed()).containsExactlyInAnyOrder(Act.DRAIN_AGAIN, Act.WITHDRAW);
        }

        @Test
        void that_came_back_a_little_it_is_not_stuck_when_a_person_has_measured() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .drainedTo(0.0028, 0.002)
                    .recoveringOver(20_000)
                    .watch(HOLD)
                    .watch(hours(25));
            assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF);

            assertThat(bench.meter(0.003).raised()).isEmpty();
        }

        @Test
        void a_load_still_on_never_ends_in_a_release() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .drainedTo(0.30, 0.002)
                    .watch(hours(12).minusMinutes(2));

            bench.contactWelded()
                    .watch(hours(26))
                    .meter(0.002)
                    .act(Act.TIE_OFF)
                    .watch(hours(25))
                    .act(Act.PART)
                    .watch(hours(8))
                    .act(Act.RELEASE);

            assertThat(bench.phase()).isNotEqualTo(Phase.RELEASED);
            assertThat(bench.judge().allowed()).doesNotContain(Act.TIE_OFF, Act.PART, Act.RELEASE);
        }

        @Test
        void a_gentle_load_still_on_is_found_as_the_voltage_goes_on_falling() {
            var gentle = new CellCard("A1", Chemistry.LAYERED_OXIDE, 0.1, 500, true, false);
            PassageBench bench = PassageBench.of(gentle)
                    .converter(2e-3, 1e-3)
                    .draining()
                    .drainedTo(0.30, 0.08)
                    .watch(hours(12).minusMinutes(2));
            bench.contactWelded().watch(minutes(3));
            for (int step = 0; step < 40; step++) {
                bench.cell(0.30, 0.08 - step * 0.001).watch(minutes(30), 4_000);
                assertThat(step > 6 || bench.raised().isEmpty()).isTrue();
            }

            assertThat(bench.standing()).containsExactly(FindingKind.LEAD_OPEN);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void a_late_rise_that_a_warmer_room_could_make_proves_nothing() {
            assertThat(lateRise(0.0058).judge().allowed()).doesNotContain(Act.TIE_OFF);
        }

        @Test
        void a_late_rise_far_above_the_voltage_on_its_load_proves_it() {
            PassageBench bench = lateRise(0.020);

            assertThat(bench.raised()).isEmpty();
            assertThat(bench.judge().allowed()).contains(Act.TIE_OFF);
        }

        private PassageBench lateRise(double toVolts) {
            PassageBench bench =
                    PassageBench.switched().draining().drainedTo(0.003, 0.003).watch(HOLD);
            return bench.watch(hours(2))
                    .recoveringOver(7200)
                    .swapFor(toVolts, 0.003)
                    .watch(hours(23));
        }
    }

    @Nested
    class After_its_bond {

        @Test
        void it_is_released_where_the_mean_resolves_what_came_back() {
            PassageBench bench = fine().draining()
                    .drainedTo(0.0028, 0.0020)
                    .watch(HOLD)
                    .watch(hours(24))
                    .act(Act.TIE_OFF)
                    .watch(hours(24).plusMinutes(2))
                    .act(Act.PART)
                    .watch(minutes(65));

            assertThat(bench.raised()).isEmpty();
            assertThat(bench.act(Act.RELEASE).phase()).isEqualTo(Phase.RELEASED);
        }

        @Test
        void it_is_released_once_it_slowly_came_back_far_above_its_voltage_on_the_load() {
            PassageBench bench = PassageBench.switched()
                    .converter(2e-4, 4e-3)
                    .draining()
                    .drainedTo(0.060, 0.0020)
                    .watch(HOLD)
                    .watch(hours(24))
                    .act(Act.TIE_OFF)
                    .watch(hours(24).plusMinutes(2))
                    .cell(0.015, 0.0020)
                    .recoveringOver(10_000)
                    .act(Act.PART)
                    .watch(minutes(65));
            assertThat(bench.judge().allowed()).doesNotContain(Act.RELEASE);

            bench.watch(hours(5));

            assertThat(bench.raised()).isEmpty();
            assertThat(bench.judge().allowed()).contains(Act.RELEASE);
        }

        @Test
        void that_comes_back_no_higher_than_on_its_load_it_is_not_released() {
            PassageBench bench = fine().draining()
                    .drainedTo(0.0028, 0.0020)
                    .watch(HOLD)
                    .watch(hours(24))
                    .act(Act.TIE_OFF)
                    .watch(hours(24).plusMinutes(2))
                    .contactWelded()
                    .act(Act.PART)
                    .watch(hours(7));

            assertThat(bench.judge().allowed()).doesNotContain(Act.RELEASE);
        }

        @Test
        void without_any_recovery_it_neither_rings_nor_may_it_be_released_and_a_meter_is_asked_for_at_the_end() {
            PassageBench bench =
                    PassageBench.switched().soaked().cell(0.001, 0.001).act(Act.PART);

            bench.watch(hours(5).plusMinutes(50));
            assertThat(bench.wishes()).doesNotContain(Wish.ASK_METER);
            bench.watch(hours(2));

            assertThat(bench.raised()).isEmpty();
            assertThat(bench.wishes()).contains(Wish.ASK_METER);
            assertThat(bench.judge().allowed()).doesNotContain(Act.RELEASE);
            assertThat(bench.act(Act.RELEASE).phase()).isEqualTo(Phase.TIE_OFF);
        }

        @Test
        void whose_meter_reads_much_more_than_the_board_the_lead_is_off() {
            PassageBench bench = PassageBench.switched()
                    .soaked()
                    .lead(Lead.OFF_ACROSS_RESISTOR)
                    .act(Act.PART)
                    .watch(hours(7));
            assertThat(bench.wishes()).contains(Wish.ASK_METER);

            bench.meter(bench.trueVolts());

            assertThat(bench.standing()).containsExactly(FindingKind.LEAD_OPEN);
        }
    }

    /** A converter whose offset hardly wanders. */
    private static PassageBench fine() {
        return PassageBench.switched().converter(2e-4, 1e-4);
    }
}
