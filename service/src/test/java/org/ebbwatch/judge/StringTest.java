package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.ebbwatch.judge.PassageBench.cellOfThree;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;
import static org.ebbwatch.judge.PassageBench.seconds;

import org.ebbwatch.judge.Outcome.Wish;
import org.junit.jupiter.api.Test;

class StringTest {

    private static PassageBench draining(boolean switched) {
        return PassageBench.of(cellOfThree(switched)).stringVolts(11.0).draining();
    }

    @Test
    void its_current_is_that_of_the_whole_string() {
        PassageBench bench = draining(true);
        double before = bench.judge().ampereHours();

        bench.watch(hours(1));

        assertThat(bench.judge().ampereHours() - before).isCloseTo(1.1, within(0.01));
    }

    @Test
    void what_is_not_known_of_a_sibling_is_not_claimed() {
        PassageBench bench = draining(true).stringVolts(Double.NaN).watch(seconds(4));
        double before = bench.judge().ampereHours();

        bench.watch(hours(1));

        assertThat(bench.judge().ampereHours()).isEqualTo(before);
        assertThat(bench.raised()).isEmpty();
    }

    @Test
    void a_measured_current_is_held_against_that_of_the_string() {
        PassageBench bench = draining(true).readsAmperes(0.34).watch(minutes(2));
        assertThat(bench.raised()).isEmpty();

        bench.readsAmperes(0.3).watch(minutes(2));

        assertThat(bench.standing()).contains(FindingKind.LOAD_LOST);
        assertThat(bench.wishes()).contains(Wish.OPEN_STRING);
    }

    @Test
    void a_cell_that_was_opened_for_another_says_for_which() {
        PassageBench bench = draining(true).stringOpenedBecauseOf("A-2").watch(minutes(1));

        assertThat(bench.phase()).isEqualTo(Phase.HELD);
        assertThat(bench.judge().reason())
                .isEqualTo("the string's load was opened because of A-2; finish its cells singly");
        assertThat(bench.isLoaded()).isFalse();
        assertThat(bench.judge().isInString()).isFalse();
    }

    @Test
    void a_cell_that_left_drains_again_only_on_a_load_of_its_own() {
        PassageBench bench = draining(true).stringOpenedBecauseOf("A-2").watch(minutes(1));
        assertThat(bench.judge().owesLoad()).isTrue();
        assertThat(bench.judge().allowed()).doesNotContain(Act.DRAIN_AGAIN);

        bench.ownLoad(5, true).act(Act.DRAIN_AGAIN).stringVolts(Double.NaN).watch(minutes(10));

        assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
        assertThat(bench.isLoaded()).isTrue();
        double before = bench.judge().ampereHours();
        bench.watch(hours(1));
        assertThat(bench.judge().ampereHours() - before).isCloseTo(3.6 / 5, within(0.01));
    }

    @Test
    void a_load_of_its_own_is_named_once_and_only_by_a_cell_that_left() {
        PassageBench bench = draining(true).ownLoad(5, false);
        assertThat(bench.judge().isSwitched()).isTrue();

        bench.stringOpenedBecauseOf("A-2").ownLoad(5, false).ownLoad(7, true);

        assertThat(bench.judge().isSwitched()).isFalse();
        bench.act(Act.DRAIN_AGAIN);
        assertThat(bench.wishes()).contains(Wish.ASK_PUT_ON);
    }

    @Test
    void a_string_that_hands_loaded_rings_for_somebody_to_take_the_load_off() {
        PassageBench bench = draining(false).stringOpenedBecauseOf("A-2");

        assertThat(bench.standing()).containsExactly(FindingKind.LOAD_STUCK);
        assertThat(bench.judge().allowed()).contains(Act.TAKE_OFF);
        assertThat(bench.judge().isLoadOn()).isTrue();
    }

    @Test
    void a_step_that_hands_make_at_a_string_is_asked_about_and_nothing_concluded() {
        PassageBench bench = draining(false).handLoadQuietly(false).watch(minutes(2));

        assertThat(bench.judge().seems()).contains(LoadStep.SEEMS_OFF);
        assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
    }
}
