package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;
import static org.ebbwatch.judge.PassageBench.seconds;

import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class LoadTest {

    @Nested
    class LOAD_LOST {

        @Test
        void is_raised_when_no_sag_follows_the_load() {
            PassageBench bench = PassageBench.switched()
                    .checkedIn()
                    .resistorBroken()
                    .act(Act.PUT_ON)
                    .watch(seconds(75));

            assertThat(bench.standing()).contains(FindingKind.LOAD_LOST);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.judge().isLoadWanted()).isFalse();
            assertThat(bench.wishes()).contains(Wish.OPEN_LOAD);
        }

        @Test
        void is_not_raised_for_a_small_but_plain_sag() {
            PassageBench bench = PassageBench.switched()
                    .cell(3.70, 3.69)
                    .checkedIn()
                    .act(Act.PUT_ON)
                    .watch(hours(1));

            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void is_not_raised_within_minutes_where_the_converter_is_too_coarse_for_the_sag() {
            PassageBench bench = PassageBench.switched()
                    .converter(3e-3, 2e-3)
                    .cell(3.00, 2.993)
                    .checkedIn()
                    .act(Act.PUT_ON)
                    .watch(minutes(20))
                    .cell(2.99, 2.97)
                    .watch(minutes(30));

            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void is_not_raised_for_the_small_sag_of_a_large_cell_behind_much_noise() {
            PassageBench bench = largeAndNoisy().act(Act.PUT_ON).watch(hours(1));

            assertThat(bench.raised()).isEmpty();
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        }

        @Test
        void is_raised_behind_much_noise_as_soon_as_means_would_show_the_sag() {
            PassageBench bench =
                    largeAndNoisy().resistorBroken().act(Act.PUT_ON).watch(minutes(2));
            assertThat(bench.raised()).isEmpty();

            bench.watch(minutes(30));

            assertThat(bench.standing()).containsExactly(FindingKind.LOAD_LOST);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void is_not_raised_for_a_sag_that_means_only_hint_at() {
            PassageBench bench =
                    largeAndNoisy().cell(3.700, 3.6925).act(Act.PUT_ON).watch(hours(1));

            assertThat(bench.raised()).isEmpty();
        }

        private PassageBench largeAndNoisy() {
            var large = new CellCard("A1", Chemistry.LAYERED_OXIDE, 10, 2.5, true, false);
            return PassageBench.of(large)
                    .converter(1e-3, 4e-3)
                    .cell(3.700, 3.686)
                    .watch(minutes(10));
        }

        @Test
        void is_not_raised_without_a_sag_where_a_current_is_measured() {
            PassageBench bench = PassageBench.switched()
                    .readsCurrent()
                    .cell(3.7, 3.7)
                    .checkedIn()
                    .act(Act.PUT_ON)
                    .watch(minutes(5));

            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void is_raised_when_the_current_stops_under_way() {
            PassageBench bench = PassageBench.switched().readsCurrent().draining();
            assertThat(bench.raised()).isEmpty();

            bench.readsAmperes(0.001).watch(minutes(1));

            assertThat(bench.standing()).contains(FindingKind.LOAD_LOST);
        }

        @Test
        void is_raised_when_the_voltage_climbs_on_its_load() {
            PassageBench bench = PassageBench.switched().draining().emptied().watch(hours(2));

            bench.resistorBroken().watch(minutes(2));

            assertThat(bench.standing()).contains(FindingKind.LOAD_LOST);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void is_not_raised_when_a_warmer_room_lifts_an_empty_cell_over_hours() {
            PassageBench bench = PassageBench.switched().draining().emptied().watch(hours(1));
            for (int step = 0; step < 40; step++) {
                bench.cell(0.3, 0.03 + step * 0.0007).watch(minutes(15), 4_000);
            }

            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void is_raised_when_the_board_will_not_close_the_load() {
            PassageBench bench = PassageBench.switched()
                    .checkedIn()
                    .boardIgnoresLoadCommands()
                    .act(Act.PUT_ON)
                    .watch(seconds(55));
            assertThat(bench.raised()).isEmpty();

            bench.watch(seconds(10));

            assertThat(bench.standing()).containsExactly(FindingKind.LOAD_LOST);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void is_not_raised_when_the_board_needs_to_be_asked_twice() {
            PassageBench bench = PassageBench.switched()
                    .checkedIn()
                    .boardIgnoresLoadCommands()
                    .act(Act.PUT_ON)
                    .watch(seconds(15))
                    .boardObeysAgain()
                    .watch(minutes(5));

            assertThat(bench.raised()).isEmpty();
            assertThat(bench.isLoaded()).isTrue();
        }

        @Test
        void is_not_raised_when_a_person_put_the_load_on_a_while_before_saying_so() {
            PassageBench bench = PassageBench.handLoaded()
                    .checkedIn()
                    .handLoadQuietly(true)
                    .watch(minutes(2))
                    .act(Act.PUT_ON)
                    .watch(hours(1));

            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void is_raised_where_a_load_was_said_to_be_on_and_never_drew() {
            PassageBench bench = PassageBench.handLoaded()
                    .checkedIn()
                    .act(Act.PUT_ON)
                    .handLoadQuietly(false)
                    .watch(minutes(10));

            assertThat(bench.standing()).contains(FindingKind.LOAD_LOST);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            bench.forgetEvents().act(Act.DRAIN_AGAIN);
            assertThat(bench.wishes()).contains(Wish.ASK_PUT_ON);
            bench.act(Act.PUT_ON).watch(minutes(10));
            assertThat(bench.standing()).isEmpty();
        }

        @Test
        void is_raised_where_a_hand_loaded_cell_rises_from_nought() {
            PassageBench bench =
                    PassageBench.handLoaded().draining().drainedTo(0.7, 0.0005).watch(hours(1));
            bench.handLoadQuietly(false).watch(minutes(4));
            assertThat(bench.judge().seems()).contains(LoadStep.SEEMS_OFF);
            assertThat(bench.raised()).isEmpty();
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);

            bench.watch(minutes(4));

            assertThat(bench.standing()).contains(FindingKind.LOAD_LOST);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void is_never_raised_for_a_load_taken_off_and_said_so() {
            PassageBench bench = PassageBench.handLoaded().draining();
            for (int pulse = 0; pulse < 10; pulse++) {
                bench.act(Act.TAKE_OFF).watch(seconds(20)).act(Act.PUT_ON).watch(seconds(20));
            }

            assertThat(bench.raised()).containsOnly(FindingKind.REBOUND);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        }
    }

    @Nested
    class LOAD_STUCK {

        @Test
        void is_raised_when_nothing_comes_back_within_the_hour() {
            PassageBench bench =
                    PassageBench.switched().draining().emptied().watch(hours(12).minusMinutes(2));
            bench.contactWelded().watch(minutes(60));
            assertThat(bench.raised()).isEmpty();

            bench.watch(minutes(5));

            assertThat(bench.standing()).containsExactly(FindingKind.LOAD_STUCK);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void is_not_raised_for_a_small_recovery() {
            PassageBench bench =
                    PassageBench.switched().draining().drainedTo(0.012, 0.004).watch(hours(13));

            assertThat(bench.raised()).isEmpty();
            assertThat(bench.phase()).isEqualTo(Phase.REST);
        }

        @Test
        void is_raised_when_the_board_will_not_open_the_load() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .emptied()
                    .boardIgnoresLoadCommands()
                    .watch(hours(12));
            bench.watch(minutes(3));

            assertThat(bench.standing()).containsExactly(FindingKind.LOAD_STUCK);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void is_not_raised_when_the_service_was_away_before_it_could_ask_the_board() {
            PassageBench bench = PassageBench.switched().draining().emptied();
            assertThat(bench.watchUntil(() -> bench.phase() == Phase.REST, hours(13)))
                    .isTrue();

            bench.wishesLost().gap(minutes(5)).watch(minutes(30));

            assertThat(bench.standing()).isEmpty();
            assertThat(bench.phase()).isEqualTo(Phase.REST);
        }

        @Test
        void is_raised_when_a_hand_loaded_cell_was_never_taken_off() {
            PassageBench bench = PassageBench.handLoaded().draining().emptied().watch(hours(12));
            bench.watch(minutes(1)).act(Act.TAKE_OFF).handLoadQuietly(true).watch(minutes(65));

            assertThat(bench.standing()).containsExactly(FindingKind.LOAD_STUCK);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void is_raised_in_HELD_too_when_a_hot_cell_stays_on_its_load() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .contactWelded()
                    .celsius(61)
                    .watch(minutes(65));

            assertThat(bench.standing()).contains(FindingKind.HOT, FindingKind.LOAD_STUCK);
        }

        @Test
        void is_not_raised_in_HELD_when_the_hot_cell_recovers() {
            PassageBench bench = PassageBench.switched().draining().celsius(61).watch(minutes(30));

            assertThat(bench.standing()).contains(FindingKind.HOT).doesNotContain(FindingKind.LOAD_STUCK);
        }

        @Test
        void is_not_raised_in_HELD_when_the_load_that_is_off_was_lost_before() {
            PassageBench bench = PassageBench.switched()
                    .checkedIn()
                    .resistorBroken()
                    .act(Act.PUT_ON)
                    .watch(hours(3));

            assertThat(bench.standing()).containsExactly(FindingKind.LOAD_LOST);
        }

        @Test
        void is_not_raised_where_something_comes_back_though_too_little_to_prove_anything() {
            PassageBench bench = PassageBench.switched()
                    .converter(2e-3, 3e-2)
                    .draining()
                    .drainedTo(0.060, 0.010)
                    .watch(hours(12).plusMinutes(2))
                    .watch(hours(3));

            assertThat(bench.phase()).isEqualTo(Phase.REST);
            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void while_tied_off_is_found_when_the_bond_is_parted() {
            PassageBench bench = PassageBench.switched()
                    .soaked()
                    .contactWelded()
                    .act(Act.PART)
                    .watch(hours(7));

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.standing()).containsExactly(FindingKind.LEAD_OPEN);
        }

        @Test
        void never_ends_in_a_release() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .emptied()
                    .watch(hours(12))
                    .contactWelded();

            bench.watch(hours(26))
                    .act(Act.TIE_OFF)
                    .watch(hours(25))
                    .act(Act.PART)
                    .watch(hours(2))
                    .act(Act.RELEASE);

            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }
    }

    @Nested
    class LOAD_HOT {

        @Test
        void opens_the_load_and_holds() {
            PassageBench bench = PassageBench.switched().draining().bank(111).watch(seconds(3));

            assertThat(bench.standing()).contains(FindingKind.LOAD_HOT);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
            assertThat(bench.isLoaded()).isFalse();
        }

        @Test
        void is_not_raised_below_the_limit_or_without_a_sensor() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .bank(109)
                    .watch(minutes(1))
                    .bank(Double.NaN)
                    .watch(minutes(1));

            assertThat(bench.raised()).isEmpty();
        }

        @Test
        void is_not_raised_for_a_sensor_that_talks_nonsense_but_that_is_told() {
            PassageBench bench = PassageBench.switched().draining().bank(3.4e38).watch(seconds(5));

            assertThat(bench.standing()).containsExactly(FindingKind.SENSOR_FAULT);
            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        }
    }
}
