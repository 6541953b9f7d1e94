package org.ebbwatch.web.answer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FiguresTest {

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void what_is_no_number_is_null(double nothing) {
        assertThat(Figures.fine(nothing)).isNull();
        assertThat(Figures.coarse(nothing)).isNull();
    }

    @Property
    void no_figure_is_off_by_more_than_half_of_its_last_digit(
            @ForAll @DoubleRange(min = -100, max = 100) double number) {
        assertThat(Figures.fine(number)).isCloseTo(number, within(0.51e-6));
        assertThat(Figures.coarse(number)).isCloseTo(number, within(0.51e-3));
    }

    @Property
    void every_finite_number_stays_finite(@ForAll double number) {
        assertThat(Figures.fine(number)).isNotNull().isFinite();
    }

    @Test
    void what_rounds_to_nothing_has_no_sign() {
        assertThat(Figures.fine(-1e-9)).hasToString("0.0");
    }

    @Test
    void a_time_is_written_in_utc_and_one_that_was_never_set_is_null() {
        assertThat(Figures.wallTime(1_795_576_364_120L)).isEqualTo("2026-11-25T03:12:44.120Z");
        assertThat(Figures.wallTime(0)).isNull();
    }
}
