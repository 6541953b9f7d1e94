package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;

import org.ebbwatch.judge.Entry.LeadProof;
import org.ebbwatch.judge.procedure.BuiltIn;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class StallTest {
    @Nested
    class STALLED {

        @Test
        void is_raised_below_the_knee_when_charge_should_have_left_but_the_voltage_stands() {
            // Below 2.5 V after six minutes; 5 % of 3 Ah for sure, 5.8 % of doubt, through 10 ohms at 2.4 V take
            // 39.8 minutes, twice.
            PassageBench bench =
                    PassageBench.switched().draining().drainedTo(2.6, 2.4).watch(minutes(60));
            assertThat(bench.raised()).isEmpty();

            bench.watch(minutes(9));

            assertThat(bench.standing()).containsExactly(FindingKind.STALLED);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.isLoaded()).isTrue();
        }

        @Test
        void is_not_raised_while_the_voltage_falls() {
            PassageBench bench = PassageBench.switched().draining();
            for (int step = 0; step < 12; step++) {
                bench.cell(2.6, 2.4 - step * 0.05).watch(minutes(10));
            }

            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void is_not_raised_on_the_plateau() {
            PassageBench bench =
                    PassageBench.switched().draining().drainedTo(3.4, 3.3).watch(hours(3));

            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void knows_that_iron_phosphate_has_its_knee_lower() {
            var card = new CellCard("L1", Chemistry.LFP, 3.0, 10.0, true, false);
            PassageBench bench =
                    PassageBench.of(card).draining().drainedTo(2.6, 2.4).watch(hours(2));
            assertThat(bench.raised()).isEmpty();

            bench.cell(2.2, 1.9).watch(hours(2));
            assertThat(bench.standing()).containsExactly(FindingKind.STALLED);
        }

        @Test
        void goes_by_the_chemistry_of_the_cell_under_every_procedure() {
            var card = new CellCard("L1", Chemistry.LFP, 3.0, 10.0, true, false);
            PassageBench bench = PassageBench.of(card, BuiltIn.LFP.procedure())
                    .draining()
                    .drainedTo(2.6, 2.4)
                    .watch(hours(2));
            assertThat(bench.raised()).isEmpty();

            bench.cell(2.2, 1.9).watch(hours(2));
            assertThat(bench.standing()).containsExactly(FindingKind.STALLED);
        }

        @Test
        void is_raised_on_the_plateau_once_all_the_rated_charge_has_left() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .drainedTo(3.4, 3.0)
                    .watch(hours(10).minusMinutes(20));
            assertThat(bench.raised()).isEmpty();

            bench.watch(hours(1));

            assertThat(bench.standing()).contains(FindingKind.STALLED);
        }

        @Test
        void clears_when_the_voltage_falls_again() {
            PassageBench bench =
                    PassageBench.switched().draining().drainedTo(2.6, 2.4).watch(hours(2));
            assertThat(bench.standing()).containsExactly(FindingKind.STALLED);

            bench.cell(2.5, 2.2).watch(minutes(30));

            assertThat(bench.standing()).isEmpty();
        }

        @Test
        void is_not_raised_below_the_drain_limit() {
            PassageBench bench = PassageBench.handLoaded().draining().emptied().watch(hours(100));

            assertThat(bench.raised()).isEmpty();
        }
    }

    @Nested
    class OVERDUE {

        @Test
        void is_raised_when_more_has_left_than_the_cell_can_hold() {
            PassageBench bench = PassageBench.switched().readsAmperes(3.0).draining();
            bench.watch(minutes(66));
            assertThat(bench.raised()).doesNotContain(FindingKind.OVERDUE);

            bench.watch(minutes(8));

            assertThat(bench.standing()).contains(FindingKind.OVERDUE);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.isLoaded()).isTrue();
        }

        @Test
        void is_raised_at_twice_the_forecast_time() {
            // 3 Ah x 10 ohms / 3.6 V + 24 h = 32.3 h
            PassageBench bench =
                    PassageBench.switched().draining().drainedTo(0.4, 0.15).watch(hours(64));
            assertThat(bench.raised()).doesNotContain(FindingKind.OVERDUE);

            bench.watch(hours(2));

            assertThat(bench.standing()).contains(FindingKind.OVERDUE);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        }

        @Test
        void goes_when_the_cell_leaves_drain_and_counts_anew_once_a_person_decided() {
            PassageBench bench =
                    PassageBench.switched().readsAmperes(3.0).draining().watch(minutes(75));
            assertThat(bench.standing()).contains(FindingKind.OVERDUE);

            bench.leadChecked(LeadProof.OPEN);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.standing()).doesNotContain(FindingKind.OVERDUE);

            bench.readsAmperes(Double.NaN).watch(minutes(2)).forgetEvents();
            bench.act(Act.DRAIN_AGAIN).watch(hours(2));
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.raised()).doesNotContain(FindingKind.OVERDUE);
        }

        @Test
        void is_not_raised_while_the_cell_is_below_the_drain_limit_and_only_held() {
            PassageBench bench = PassageBench.handLoaded().draining().emptied().watch(hours(100));

            assertThat(bench.raised()).isEmpty();
        }
    }
}
