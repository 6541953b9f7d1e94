package org.ebbwatch.judge;

import static java.time.Duration.ofHours;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.CellString;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.LoadTolerance;
import org.junit.jupiter.api.Test;

/** Charge that is worked out from volts and ohms is as doubtful as the load. */
class LoadToleranceJudgedTest {

    @Test
    void charge_and_energy_are_as_doubtful_as_the_load() {
        assertThat(doubtOf(card(Optional.of(0.01)))).isCloseTo(0.0116, within(0.001));
        assertThat(doubtOf(card(Optional.of(0.2)))).isCloseTo(0.232, within(0.001));
        assertThat(doubtOf(card(Optional.empty()))).isCloseTo(0.058, within(0.001));
    }

    @Test
    void a_load_given_as_usual_is_judged_as_one_of_which_nobody_said_how_far_it_may_be_off() {
        assertThat(doubtOf(card(Optional.of(0.05)))).isEqualTo(doubtOf(card(Optional.empty())));
    }

    @Test
    void a_better_load_lets_more_of_the_charge_count_so_that_a_cell_is_overdue_sooner() {
        assertThat(isOverdueAfter(11, 0.01)).isFalse();
        assertThat(isOverdueAfter(12, 0.01)).isTrue();
        assertThat(isOverdueAfter(12, 0.1)).isFalse();
    }

    @Test
    void a_load_of_its_own_after_a_string_is_known_as_usual() {
        var string = new CellCard(
                "A4",
                Chemistry.LAYERED_OXIDE,
                3.0,
                10.0,
                true,
                true,
                Optional.of(new CellString("P1", 0, 3)),
                Optional.of(new LoadTolerance(0.01)));
        var cell = new LoadedCell(string);
        assertThat(cell.expandedLoadShare()).isCloseTo(0.0116, within(1e-9));

        cell.leaveString();
        cell.finishOn(22, true);

        assertThat(cell.expandedLoadShare()).isEqualTo(LoadTolerance.USUAL.expandedShare());
    }

    /** At 3.4 V through 10 ohms 0.34 A: 3.9 Ah, which is 130 % of the rating, after 11.5 h. */
    private static boolean isOverdueAfter(int hours, double share) {
        return PassageBench.of(card(Optional.of(share)))
                .draining()
                .drainedTo(3.5, 3.4)
                .watch(ofHours(hours))
                .raised()
                .contains(FindingKind.OVERDUE);
    }

    private static double doubtOf(CellCard card) {
        Judge judge = PassageBench.of(card).draining().watch(ofHours(1)).judge();
        return judge.expandedAmpereHours() / judge.ampereHours();
    }

    private static CellCard card(Optional<Double> share) {
        return new CellCard(
                "A1", Chemistry.LAYERED_OXIDE, 3.0, 10.0, true, false, Optional.empty(), share.map(LoadTolerance::new));
    }
}
