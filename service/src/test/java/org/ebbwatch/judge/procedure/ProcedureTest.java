package org.ebbwatch.judge.procedure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Duration;
import org.ebbwatch.judge.procedure.Procedure.Drain;
import org.ebbwatch.judge.procedure.Procedure.Heat;
import org.ebbwatch.judge.procedure.Procedure.Rest;
import org.ebbwatch.judge.procedure.Procedure.TieOff;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A set of limits that contradict each other is refused where it is made. */
class ProcedureTest {
    private static final Procedure CAREFUL = Procedure.careful();

    @ParameterizedTest
    @CsvSource({"1.0, 0.0, 1, 2", "1.0, -0.1, 1, 2", "1.0, 1.0, 1, 2", "1.0, 0.1, 0, 2", "1.0, 0.1, 2, 2"})
    void refuses_a_drain_that_never_ends_or_proves_nothing(
            double provenVolts, double limitVolts, long holdMillis, long longestMillis) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Drain(provenVolts, limitVolts, holdMillis, longestMillis));
    }

    @ParameterizedTest
    @CsvSource({"0.0, 2, 1", "1.001, 2, 1", "0.5, 2, 0", "0.5, 2, 2"})
    void refuses_a_rest_above_one_volt_or_shorter_than_its_recovery(
            double limitVolts, long leastMillis, long recoveryMillis) {
        assertThatIllegalArgumentException().isThrownBy(() -> new Rest(limitVolts, leastMillis, recoveryMillis));
    }

    @Test
    void takes_a_rest_of_one_volt() {
        assertThatCode(() -> new Rest(1.0, 2, 1)).doesNotThrowAnyException();
    }

    @ParameterizedTest
    @CsvSource({"0, 1, 1, 1, 0.02", "1, 0, 1, 1, 0.02", "1, 1, 0, 1, 0.02", "1, 1, 2, 1, 0.02", "1, 1, 1, 1, 0"})
    void refuses_a_tie_off_without_a_watch(
            long watchMillis, long unbrokenMillis, long openMillis, long longestOpenMillis, double looseVolts) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new TieOff(watchMillis, unbrokenMillis, openMillis, longestOpenMillis, looseVolts));
    }

    @Test
    void refuses_a_drain_limit_above_the_rested_limit() {
        var drain = new Drain(1.0, 0.6, 1, 2);

        assertThatIllegalArgumentException()
                .isThrownBy(() -> procedure(1, drain, CAREFUL.tieOff(), CAREFUL.heat()))
                .withMessageContaining("rested limit");
        assertThatCode(() -> procedure(1, new Drain(1.0, 0.5, 1, 2), CAREFUL.tieOff(), CAREFUL.heat()))
                .doesNotThrowAnyException();
    }

    @Test
    void refuses_a_version_below_one() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> procedure(0, CAREFUL.drain(), CAREFUL.tieOff(), CAREFUL.heat()));
    }

    @Test
    void refuses_an_unbroken_end_longer_than_the_watch() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> procedure(1, CAREFUL.drain(), new TieOff(5, 6, 1, 1, 0.02), CAREFUL.heat()));
        assertThatCode(() -> procedure(1, CAREFUL.drain(), new TieOff(6, 6, 1, 1, 0.02), CAREFUL.heat()))
                .doesNotThrowAnyException();
    }

    @ParameterizedTest
    @CsvSource({"60, 60, 3, 5", "45, 60, 5, 5"})
    void refuses_hot_before_warming(double warm, double hot, double tieOffWarm, double tieOffHot) {
        var heat = new Heat(warm, 15, 5, tieOffWarm, hot, 0.5, 2, tieOffHot, 45, 2, 35, 110, 1, 3, 1);

        assertThatIllegalArgumentException().isThrownBy(() -> procedure(1, CAREFUL.drain(), CAREFUL.tieOff(), heat));
    }

    @Test
    void strict_rests_three_days_below_a_tenth_of_a_volt_and_is_tied_off_for_two() {
        Procedure strict = Procedure.strict();

        assertThat(strict.rest().limitVolts()).isEqualTo(0.10);
        assertThat(Duration.ofMillis(strict.rest().leastMillis())).hasDays(3);
        assertThat(Duration.ofMillis(strict.tieOff().watchMillis())).hasDays(2);
    }

    private static Procedure procedure(int version, Drain drain, TieOff tieOff, Heat heat) {
        return new Procedure("made up", version, drain, CAREFUL.rest(), tieOff, heat, CAREFUL.plausible());
    }
}
